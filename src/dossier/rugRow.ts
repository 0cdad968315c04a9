import { sizeOf } from './planFacts.ts';
import { type StageStanding, stageOf, stagesOf } from './stage.ts';
import { latestVisit, presentVisit, type RugStanding } from './standing.ts';
import { wetNowSince } from './wetting.ts';

/** What a list shows of a rug: everything that does not depend on the time of looking. */
export interface RugRow {
  readonly number: number;
  readonly title: string;
  readonly tag: string | null;
  readonly client: string | null;
  readonly consignment: string | null;
  readonly stage: string | null;
  readonly stages: readonly StageStanding[];
  readonly place: string | null;
  readonly receivedAt: string | null;
  readonly promisedFor: string | null;
  readonly sizeMm: { readonly lengthMm: number; readonly widthMm: number } | null;
  /** Photograph to know it by. */
  readonly photo: string | null;
  readonly quarantined: boolean;
  readonly wetSince: string | null;
  readonly inHouse: boolean;
}

/** The columns and words by which a rug's row is found; the ledger keeps it beside the entries. */
export interface RugRowColumns {
  readonly tag: string | null;
  readonly client: string | null;
  readonly consignment: string | null;
  readonly stage: string | null;
  readonly place: string | null;
  readonly dueAt: string | null;
  readonly inHouse: boolean;
  readonly words: readonly string[];
  readonly body: RugRow;
}

/** A picture of the face, else any picture. */
const portraitOf = ({ photographs }: RugStanding): string | null =>
  (photographs.findLast(({ shows }) => shows === 'face') ?? photographs.at(-1))?.photo ?? null;

const wordsOf = (standing: RugStanding, row: RugRow): readonly string[] => {
  const told = standing.claims.flatMap((claim) => {
    switch (claim.about) {
      case 'construction':
        return [claim.construction];
      case 'pile':
        return Object.keys(claim.fibres);
      case 'warp':
      case 'weft':
      case 'backing':
        return [claim.fibre];
      case 'knot':
        return [claim.knot];
      case 'latex':
      case 'period':
        return [];
      default:
        return [claim.words];
    }
  });
  const colours = standing.colours.map(({ name }) => name);
  return [row.title, String(row.number), row.tag ?? '', row.place ?? '', ...told, ...colours];
};

/**
 * The row a list keeps for a rug.
 *
 * @param standing - the rug's standing
 * @returns the row, or null before the dossier is opened; `words` are passages still to be split
 * @source none: rule of this project
 */
export function rugRow(standing: RugStanding): RugRowColumns | null {
  if (standing.opened === null) return null;
  const visit = latestVisit(standing);
  const inHouse = presentVisit(standing) !== null;
  const size = sizeOf(standing);
  const body: RugRow = {
    number: standing.opened.number,
    title: standing.opened.title,
    // A tag is reused after the return: an ended visit has none.
    tag: inHouse ? (visit?.received.tag ?? null) : null,
    client: visit?.received.client ?? null,
    consignment: visit?.received.consignment ?? null,
    stage: stageOf(standing),
    stages: stagesOf(standing),
    place: standing.place,
    receivedAt: visit?.received.when ?? null,
    promisedFor: visit?.received.promisedFor ?? null,
    sizeMm: size === null ? null : { lengthMm: size.lengthMm, widthMm: size.widthMm },
    photo: portraitOf(standing),
    quarantined: standing.quarantine !== null,
    wetSince: visit === null || visit.dryAccepted !== null ? null : wetNowSince(visit),
    inHouse,
  };
  return {
    tag: body.tag,
    client: body.client,
    consignment: body.consignment,
    stage: body.stage,
    place: body.place,
    dueAt: body.promisedFor === null ? null : `${body.promisedFor}T17:00:00.000Z`,
    inHouse,
    words: wordsOf(standing, body),
    body,
  };
}
