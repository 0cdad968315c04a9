import table from '../../../../data/wash/dyeTests.json' with { type: 'json' };
import {
  grades,
  type RequiredDyeTest,
  type Side,
  sides,
  type TestLiquid,
  testLiquids,
} from '../../../core/wash/index.ts';
import type { Noted, NotedColour, RugStanding } from '../../../dossier/index.ts';
import type { BlotPlace } from '../ask.ts';

/** What one cell of the matrix shows. */
export type BlotState =
  | { readonly kind: 'lying'; readonly blot: Noted<'DyeTestStarted'> }
  | {
      readonly kind: 'read';
      readonly test: Noted<'DyeTested'>;
      readonly fails: boolean;
      readonly stale: boolean;
    }
  | { readonly kind: 'missing' }
  | { readonly kind: 'stopped'; readonly at: TestLiquid };

export interface Blot {
  readonly place: BlotPlace;
  readonly state: BlotState;
}

export interface ColourBlots {
  readonly colour: NotedColour;
  readonly blots: readonly Blot[];
}

/** A blot fails at grade 3 and worse. */
export const fails = (test: Noted<'DyeTested'>): boolean =>
  test.reading.kind === 'graded' && grades.indexOf(test.reading.staining) <= grades.indexOf('3');

const samePlace = (a: Omit<BlotPlace, 'required'>, b: Omit<BlotPlace, 'required'>) =>
  a.colour === b.colour && a.side === b.side && a.liquid === b.liquid && a.atUrinePlace === b.atUrinePlace;

const placeOf = (test: Noted<'DyeTested'>): BlotPlace => ({
  colour: test.colour,
  side: test.side,
  liquid: test.liquid,
  atUrinePlace: test.atUrinePlace === true,
});

/** Test readings hold for so long. */
export const validDays = table.validDays;

const rank = (place: BlotPlace) =>
  testLiquids.indexOf(place.liquid) * 10 + sides.indexOf(place.side) * 2 + (place.atUrinePlace ? 1 : 0);

/** The weakest liquid that failed on a colour's side: stronger ones are not tried after it. */
const failedAt = (standing: RugStanding, colour: string, side: Side): TestLiquid | undefined =>
  testLiquids.find((liquid) =>
    standing.dyeTests.some(
      (test) => test.colour === colour && test.side === side && test.liquid === liquid && fails(test),
    ),
  );

/** Every colour with the blots asked for and those made, weakest liquid first. */
export function blotsOf(
  standing: RugStanding,
  required: readonly RequiredDyeTest[],
  missing: readonly RequiredDyeTest[],
): readonly ColourBlots[] {
  const isMissing = (place: BlotPlace) => missing.some((test) => samePlace(test, place));
  const stateOf = (place: BlotPlace): BlotState => {
    const lying = standing.lyingBlots.findLast(
      (blot) => blot.colour === place.colour && blot.side === place.side && blot.liquid === place.liquid,
    );
    if (lying !== undefined && !place.atUrinePlace) return { kind: 'lying', blot: lying };
    const test = standing.dyeTests.findLast((one) => samePlace(placeOf(one), place));
    if (test !== undefined)
      return { kind: 'read', test, fails: fails(test), stale: isMissing(place) && !fails(test) };
    const stop = failedAt(standing, place.colour, place.side);
    return stop !== undefined && testLiquids.indexOf(stop) < testLiquids.indexOf(place.liquid)
      ? { kind: 'stopped', at: stop }
      : { kind: 'missing' };
  };
  return standing.colours.map((colour) => {
    const places: BlotPlace[] = required
      .filter((test) => test.colour === colour.colour)
      .map((test) => ({
        colour: test.colour,
        side: test.side,
        liquid: test.liquid,
        atUrinePlace: test.atUrinePlace,
        required: test,
      }));
    for (const test of standing.dyeTests.filter((one) => one.colour === colour.colour)) {
      const place = placeOf(test);
      if (!places.some((known) => samePlace(known, place))) places.push(place);
    }
    const blots = places.sort((a, b) => rank(a) - rank(b)).map((place) => ({ place, state: stateOf(place) }));
    return { colour, blots };
  });
}

/** The blots still to be made, those behind a failure left out. */
export const openBlots = (rows: readonly ColourBlots[]): readonly Blot[] =>
  rows.flatMap(({ blots }) =>
    blots.filter(({ state }) => state.kind === 'missing' || (state.kind === 'read' && state.stale)),
  );
