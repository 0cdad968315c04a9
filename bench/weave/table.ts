import type { Outcome } from './outcome.ts';

const quantile = (values: readonly number[], share: number): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
};

const percent = (part: number, of: number, digits = 1): string =>
  of === 0 ? '–' : `${((100 * part) / of).toFixed(digits)} %`;

const within = (outcomes: readonly Outcome[], most: number): number =>
  outcomes.filter(({ off }) => off !== null && off <= most).length;

const row = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;

function line(name: string, outcomes: readonly Outcome[]): string {
  const accepted = outcomes.filter((one) => one.accepted);
  const sure = accepted.filter(({ confidence }) => confidence >= 0.8);
  const offs = accepted.flatMap(({ off }) => (off === null ? [] : [off]));
  return row([
    name,
    String(outcomes.length),
    percent(accepted.length, outcomes.length),
    percent(within(accepted, 0.05), accepted.length),
    percent(within(accepted, 0.02), accepted.length),
    offs.length === 0 ? '–' : `${(100 * quantile(offs, 0.5)).toFixed(2)} %`,
    percent(accepted.filter(({ inside }) => inside).length, accepted.length),
    String(sure.length),
    percent(sure.length - within(sure, 0.05), sure.length),
  ]);
}

/** The accuracy table: by axis, then by construction and by pixels per repeat; shares are of the accepted. */
export function accuracyTable(outcomes: readonly Outcome[]): string {
  const groups = [...new Set(outcomes.flatMap((one) => one.groups))].sort((a, b) =>
    a.localeCompare(b, 'en', { numeric: true }),
  );
  return [
    row([
      'axis or kind of picture',
      'axes',
      'accepted',
      'within 5 %',
      'within 2 %',
      'median error',
      'inside the 95 % interval',
      'confidence 0.8 and more',
      'of these wrong',
    ]),
    row(Array.from({ length: 9 }, () => '---')),
    ...(['weftwise', 'warpwise'] as const).map((axis) =>
      line(
        axis,
        outcomes.filter((one) => one.axis === axis),
      ),
    ),
    ...groups.map((group) =>
      line(
        group,
        outcomes.filter((one) => one.groups.includes(group)),
      ),
    ),
  ].join('\n');
}

/** How well the stated confidence holds, and what taps do. */
export function confidenceTable(outcomes: readonly Outcome[]): string {
  const accepted = outcomes.filter((one) => one.accepted);
  const bounds = [0, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 1.01];
  const tapped = outcomes.flatMap(({ tappedOff }) => (tappedOff === null ? [] : [tappedOff]));
  const refused = new Map<string, number>();
  for (const { refused: code } of outcomes)
    if (code !== null) refused.set(code, (refused.get(code) ?? 0) + 0.5);
  return [
    row(['confidence', 'axes', 'within 5 %']),
    row(['---', '---', '---']),
    ...bounds.slice(0, -1).map((low, index) => {
      const high = bounds[index + 1] ?? 1;
      const here = accepted.filter(({ confidence }) => confidence >= low && confidence < high);
      return row([
        `${low} to ${Math.min(1, high)}`,
        String(here.length),
        percent(within(here, 0.05), here.length),
      ]);
    }),
    '',
    `With one pair of taps to each axis: ${tapped.length} of ${outcomes.length} axes answered, ${tapped.filter((off) => off > 0.2).length} factor errors, ${percent(tapped.filter((off) => off <= 0.02).length, tapped.length)} within 2 %.`,
    `Refused pictures: ${[...refused].map(([code, pictures]) => `${code} ${pictures}`).join(', ') || 'none'}.`,
    `Time of one count: median ${quantile(
      outcomes.map(({ countMs }) => countMs),
      0.5,
    ).toFixed(0)} ms.`,
  ].join('\n');
}
