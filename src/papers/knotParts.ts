import { threeFigures, toThreeFigures, totalKnots, weavingDays } from '../core/weave/index.ts';
import {
  type Estimate,
  type KnotResult,
  knotResult,
  type Noted,
  type RugStanding,
  sizeOf,
} from '../dossier/index.ts';
import { dayOfInstant } from './measureWords.ts';
import type { PaperPart } from './paper.ts';
import type { PaperContext } from './paperContext.ts';
import { type FactRow, facts, figures, heading, notice, row, table, text, words } from './parts.ts';
import { personWords } from './visitWords.ts';

type Counted = Noted<'KnotsCounted'>;

const per7cm = (perM: number): string => threeFigures(0.07 * perM);

const range = ({ interval95 }: Estimate, each = 1): string =>
  interval95 === null ? '' : interval95.map((bound) => threeFigures(each * bound)).join(' to ');

const inWords = ({ interval95 }: Estimate, words: string): string =>
  interval95 === null
    ? 'fewer than three places: no interval for the whole rug'
    : `${words}; holds 19 times of 20`;

/** How far a person vouches for it. */
const basisWords = (count: Counted, { isConfirmed, places }: KnotResult): string => {
  if (count.counted === 'by hand') return 'counted by hand with a ruler';
  if (isConfirmed) return 'counted on photographs, confirmed by a person along both ways at every place';
  const open = places.filter(({ basis }) =>
    [basis.weftwise, basis.warpwise].some((one) => one === 'automatic' || one === 'tapped'),
  ).length;
  return `counted on photographs; not confirmed by a person along both ways at ${open} of ${places.length} places`;
};

const scaleWords = (count: Counted): readonly string[] =>
  count.counted === 'by hand'
    ? []
    : [
        ...new Set(
          count.places.map(({ scale }) => {
            if (scale.from === 'given') return 'scale given by hand';
            if (scale.from !== 'card') return 'scale from a length in the picture';
            return scale.barMm === undefined
              ? `weave card ${scale.serial}, never measured: its scale is unverified, ±3 %`
              : `weave card ${scale.serial}, its 100 mm bar measured at ${scale.barMm} mm`;
          }),
        ),
      ];

/** Names with their axes, so that nobody takes one for the other. */
const notationRows = ({ written }: KnotResult): readonly FactRow[] =>
  written
    .filter(({ notation }) => !['per-7-cm', 'per-square-decimetre', 'per-square-inch'].includes(notation))
    .map(({ name, text: figure, assumesSquare }) =>
      row(name, toThreeFigures(figure), assumesSquare ? 'taken as square' : ''),
    );

const wholeRug = (result: KnotResult, rug: RugStanding): readonly FactRow[] => {
  const size = sizeOf(rug);
  if (size === null) return [];
  const knots = totalKnots([{ areaM2: size.areaM2, density: result.density, juftiShare: 0 }]);
  const days = weavingDays(knots);
  return [
    row('Knots of the whole rug', `about ${threeFigures(knots)}`, 'measured area without fringe'),
    row(
      'Weaving time',
      `about ${threeFigures(days.least)} to ${threeFigures(days.most)} days of one weaver`,
      'by the fastest and slowest rates stated in the trade, which scatter by a factor of three',
    ),
  ];
};

const oddWords = (result: KnotResult): readonly PaperPart[] =>
  result.odd.length === 0
    ? []
    : [
        notice(
          'note',
          'Places that differ more than is ordinary',
          result.odd.map(
            ({ place, axis, ratio }) =>
              `${result.places[place]?.place ?? ''}: ${axis === 'weftwise' ? 'across' : 'along'} ${threeFigures(ratio)} times the median`,
          ),
        ),
      ];

function countParts(count: Counted, context: PaperContext): readonly PaperPart[] {
  const result = knotResult(count);
  const { weftwisePerM, warpwisePerM, perDm2, perSquareInch } = result;
  const photographed = count.counted === 'photographed' ? count : null;
  return [
    facts(
      row(
        'Knots in 7 cm, across × along',
        `${per7cm(weftwisePerM.value)} × ${per7cm(warpwisePerM.value)}`,
        inWords(weftwisePerM, `across ${range(weftwisePerM, 0.07)}, along ${range(warpwisePerM, 0.07)}`),
      ),
      row('Knots per dm²', threeFigures(perDm2.value), range(perDm2)),
      row('Knots per square inch', threeFigures(perSquareInch.value), range(perSquareInch)),
      ...notationRows(result),
      ...wholeRug(result, context.rug),
      row('Basis', basisWords(count, result), scaleWords(count).join('; ')),
      row(
        'Nodes per knot',
        String(count.nodesPerKnot),
        photographed === null ? '' : `decided by: ${photographed.nodesWhy}`,
      ),
      row(
        'Counted',
        `${personWords(context, count.by)}, ${dayOfInstant(count.when, context.timeZone)}`,
        photographed?.algorithm,
      ),
    ),
    ...oddWords(result),
    table(
      [
        words('Place', 1.3),
        figures('Across, in 7 cm', 1.3),
        figures('Along, in 7 cm', 1.3),
        words('Basis', 1.6),
      ],
      result.places.map(({ place, weftwisePerM: across, warpwisePerM: along, basis }) => [
        place,
        `${per7cm(across.value)} (${range(across, 0.07)})`,
        `${per7cm(along.value)} (${range(along, 0.07)})`,
        basis.weftwise === basis.warpwise
          ? basis.weftwise
          : `across ${basis.weftwise}, along ${basis.warpwise}`,
      ]),
      '',
      'Knots, not nodes. In brackets what holds 19 times of 20 at that place, its scale included.',
    ),
    ...(photographed === null
      ? []
      : [
          {
            kind: 'pictures' as const,
            across: 3 as const,
            pictures: photographed.places.map(({ photo, place }) => ({ photo, caption: place })),
          },
        ]),
  ];
}

/** The latest count of knots in every notation, with its interval, its basis and the places it was made at. */
export function knotParts(context: PaperContext): readonly PaperPart[] {
  const latest = context.rug.knots.at(-1);
  const earlier = context.rug.knots.length - 1;
  return [
    heading(2, 'Knots counted'),
    ...(latest === undefined ? [text('Knots have not been counted.', 'soft')] : countParts(latest, context)),
    ...(earlier < 1
      ? []
      : [
          text(
            `${earlier} earlier ${earlier === 1 ? 'count stands' : 'counts stand'} in the history.`,
            'soft',
          ),
        ]),
  ];
}
