import { scaleLinear } from 'd3-scale';
import { Link } from 'wouter';
import type { RugAnswer } from '../../core/drying/index.ts';
import { wetClockHours } from '../../dossier/index.ts';
import { chanceWords } from '../../text/dryAlarmWords.ts';
import { instantWords, Section } from '../kit/index.ts';
import { dayTicks } from './dayTicks.ts';
import { instantOf, pastRed, useRoomView } from './roomView.ts';

const width = 620;
const height = 82;
const [top, thick] = [26, 26];

const rank = ({ spread, targetAtHour }: RugAnswer): number =>
  -1000 * (spread?.chanceRed ?? 0) - (targetAtHour ?? 999);

/** Each rug's forecast as a band over the clock, with the 24 and 48 hours of its own wet clock. */
export function ForecastClock({ ms }: { readonly ms: number }) {
  const { answer, rugs, zero, now } = useRoomView();
  if (answer === null) return null;
  const nowHour = (Date.parse(now) - Date.parse(zero)) / 3_600_000;
  const rows = [...answer.rugs].sort((a, b) => rank(a) - rank(b));
  const ends = rows.flatMap(({ id, spread, targetAtHour }) => {
    const hung = hourOf(rugs.find(({ rug }) => rug === id)?.hungAt ?? zero, zero);
    return [hung + (spread?.interval95[1] ?? 0), targetAtHour ?? 0];
  });
  const until = Math.min(nowHour + 72, Math.max(nowHour + 24, ...ends) + 3);
  const from = Math.max(Math.min(0, ...rugs.map(({ wettedAt }) => hourOf(wettedAt, zero))), nowHour - 30);
  const x = scaleLinear().domain([from, until]).range([0, width]).clamp(true);
  return (
    <Section title="When each will be dry">
      <DayRow x={x} from={from} until={until} />
      <ul className="plain-list clockRows">
        {rows.map((row) => {
          const rug = rugs.find((one) => one.rug === row.id);
          return rug === undefined ? null : (
            <li key={row.id}>
              <Link href={`/rugs/${row.id}?at=dry`} className="clockName">
                <b>{rug.tag}</b> {rug.title}
              </Link>
              <ClockRow
                row={row}
                hungAt={rug.hungAt}
                wettedAt={rug.wettedAt}
                x={x}
                hours={[from, until]}
                nowHour={nowHour}
              />
            </li>
          );
        })}
      </ul>
      <p className="why">
        Dark band: 80 % likely; light band: 95 %; ◆ 24 h and ▲ 48 h since first wetting (US EPA, mould
        course). Worked out in {(ms / 1000).toFixed(1)} s on this device from{' '}
        {rugs.reduce((sum, { looks }) => sum + looks.length, 0)} readings; dry means at rest at 65 % RH, and
        the dry standard is proved at the rug, not here.
      </p>
    </Section>
  );
}

/** The days over the bands below. */
function DayRow(props: {
  readonly x: (hour: number) => number;
  readonly from: number;
  readonly until: number;
}) {
  const { x, from, until } = props;
  const { zero } = useRoomView();
  return (
    <svg className="clockPlot" viewBox={`0 0 ${width} 34`} aria-hidden="true">
      {dayTicks(zero, from, until).map(({ hour, day }) => (
        <g key={hour}>
          <line x1={x(hour)} x2={x(hour)} y1={0} y2={34} className="plotLevel" />
          <text x={x(hour) + 6} y={24}>
            {day}
          </text>
        </g>
      ))}
    </svg>
  );
}

const hourOf = (instant: string, zero: string): number =>
  (Date.parse(instant) - Date.parse(zero)) / 3_600_000;

function ClockRow(props: {
  readonly row: RugAnswer;
  readonly hungAt: string;
  readonly wettedAt: string;
  readonly x: (hour: number) => number;
  readonly hours: readonly [from: number, until: number];
  readonly nowHour: number;
}) {
  const { row, hungAt, wettedAt, x, hours, nowHour } = props;
  const { zero, answer } = useRoomView();
  const [hung, wetted] = [hourOf(hungAt, zero), hourOf(wettedAt, zero)];
  const { spread, targetAtHour } = row;
  const at = (hours: number | null | undefined) =>
    hours === null || hours === undefined ? null : hung + hours;
  const [low, high] = [at(spread?.interval80[0]), at(spread?.interval80[1])];
  const [first, last] = [at(spread?.interval95[0]), at(spread?.interval95[1])];
  const isLate = pastRed(answer, row.id);
  const told = rowWords({ low, high, targetAtHour, nowHour, zero });
  const bar = (start: number | null, end: number | null, name: string) =>
    start === null ? null : (
      <rect
        x={x(start)}
        width={Math.max(3, x(end ?? 9999) - x(start))}
        y={top}
        height={thick}
        className={name}
      />
    );
  const marks = [
    { hour: wetted + wetClockHours.amberHours, sign: '◆', name: 'dryAmber' },
    { hour: wetted + wetClockHours.redHours, sign: '▲', name: 'dryRed' },
  ];
  return (
    <>
      <svg className="clockPlot" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={told}>
        <rect x={0} width={width} y={top} height={thick} className="clockGround" />
        {dayTicks(zero, ...hours).map(({ hour }) => (
          <line key={hour} x1={x(hour)} x2={x(hour)} y1={top} y2={top + thick} className="plotLevel" />
        ))}
        {bar(first, last, 'dryPossible')}
        {bar(low, high, 'dryLikely')}
        {targetAtHour === null ? null : (
          <line x1={x(targetAtHour)} x2={x(targetAtHour)} y1={top} y2={top + thick} className="dryMedian" />
        )}
        {marks.map(({ hour, sign, name }) => (
          <g key={name}>
            <line x1={x(hour)} x2={x(hour)} y1={top - 4} y2={top + thick + 4} className={name} />
            <text x={x(hour)} y={top - 8} textAnchor={x(hour) > width - 40 ? 'end' : 'middle'}>
              {sign}
            </text>
          </g>
        ))}
        <line x1={x(nowHour)} x2={x(nowHour)} y1={top - 4} y2={top + thick + 4} className="clockNow" />
        <text x={x(nowHour)} y={height - 4} textAnchor={x(nowHour) < 40 ? 'start' : 'middle'}>
          now
        </text>
      </svg>
      <p className={isLate ? 'clockTold now' : 'clockTold'}>
        {isLate ? <span aria-hidden="true">▲ </span> : null}
        {told}
        {isLate ? ` · ${chanceWords(spread?.chanceRed ?? 0)} likely to be wet past 48 h` : ''}
      </p>
    </>
  );
}

function rowWords(of: {
  readonly low: number | null;
  readonly high: number | null;
  readonly targetAtHour: number | null;
  readonly nowHour: number;
  readonly zero: string;
}): string {
  const { low, high, targetAtHour, nowHour, zero } = of;
  const at = (hour: number) => instantWords(instantOf(zero, hour));
  if (high !== null && high <= nowHour) return 'by the forecast dry now: prove it by the dry standard';
  if (low === null) return 'not dry within the hours looked at';
  if (high === null) return `not before ${at(low)}; no end in the hours looked at is sure`;
  const from = low <= nowHour ? 'now' : at(low);
  return `${from} – ${at(high)}, 80 % likely${targetAtHour === null ? '' : `; most likely ${at(targetAtHour)}`}`;
}
