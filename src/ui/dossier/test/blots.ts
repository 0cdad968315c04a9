import {
  type Agent,
  type Grade,
  grades,
  type RequiredDyeTest,
  type Side,
  sides,
  type TestLiquid,
  testLiquids,
} from '../../../core/wash/index.ts';
import {
  countsAs,
  hoursBetween,
  isOneLiquid,
  type Noted,
  type NotedColour,
  type RugStanding,
} from '../../../dossier/index.ts';
import type { BlotPlace } from '../ask.ts';

/** What one cell of the matrix shows. */
export type BlotState =
  | { readonly kind: 'lying'; readonly blot: Noted<'DyeTestStarted'> }
  | {
      readonly kind: 'read';
      readonly test: Noted<'DyeTested'>;
      /** The grade it counts with; null while it is unclear. */
      readonly grade: Grade | null;
      readonly fails: boolean;
      /** Why the plan asks for it again, where it does. */
      readonly again: 'too old' | 'other conditions' | null;
      /** Last instant at which it clears a bath. */
      readonly clearsUntil: string;
    }
  | { readonly kind: 'missing'; readonly blocksWetWork: boolean }
  /** The other side proves it, or nothing asks for it. */
  | { readonly kind: 'not needed' };

export interface Blot {
  readonly place: BlotPlace;
  readonly state: BlotState;
}

/** Where on the rug a colour is tested. */
export interface Site {
  readonly side: Side;
  readonly atUrinePlace: boolean;
}

export interface ColourBlots {
  readonly colour: NotedColour;
  readonly sites: readonly Site[];
  readonly rows: readonly {
    readonly liquid: TestLiquid;
    /** Which spotter; absent for the other liquids. */
    readonly agents?: readonly Agent[] | undefined;
    readonly blots: readonly (Blot | null)[];
  }[];
}

/** A blot fails at grade 3 and worse. */
const isFailure = (grade: Grade): boolean => grades.indexOf(grade) <= grades.indexOf('3');

interface Placed extends Site {
  readonly colour: string;
  readonly liquid: TestLiquid;
  readonly agents?: readonly Agent[] | undefined;
}

const isSame = (a: Placed, b: Placed) =>
  a.colour === b.colour && a.side === b.side && isOneLiquid(a, b) && a.atUrinePlace === b.atUrinePlace;

const placed = (test: Noted<'DyeTested'>): Placed => ({
  colour: test.colour,
  side: test.side,
  liquid: test.liquid,
  ...(test.liquid === 'spotter' ? { agents: test.agents } : {}),
  atUrinePlace: test.atUrinePlace === true,
});

/** A spotter is asked for by its stain's card, not by the plan: made again, it is made as it was. */
const asMade = ({ liquid, colour, side, agents, ph, temperatureC, minutes }: Noted<'DyeTested'>) =>
  liquid !== 'spotter' || agents === undefined
    ? undefined
    : {
        ...{ colour, side, liquid, agents, name: colour, atUrinePlace: false, blocksWetWork: false },
        because: 'As it was made before.',
        ...(ph === undefined ? {} : { pH: ph }),
        ...(temperatureC === undefined ? {} : { temperatureC }),
        ...(minutes === undefined ? {} : { minutes }),
      };

const siteRank = ({ side, atUrinePlace }: Site) => sides.indexOf(side) + (atUrinePlace ? 10 : 0);

/**
 * Every colour as liquids against sites, weakest liquid first; null where nothing is asked, as after a
 * failure.
 */
export function blotsOf(
  standing: RugStanding,
  required: readonly RequiredDyeTest[],
  missing: readonly RequiredDyeTest[],
  { now, validDays }: { readonly now: string; readonly validDays: number },
): readonly ColourBlots[] {
  const stateOf = (place: Placed): BlotState => {
    const lying = standing.lyingBlots.findLast((blot) =>
      isSame({ ...blot, atUrinePlace: blot.atUrinePlace === true }, place),
    );
    if (lying !== undefined) return { kind: 'lying', blot: lying };
    const asked = missing.find((test) => isSame(test, place));
    const test = standing.dyeTests.findLast((one) => isSame(placed(one), place));
    if (test !== undefined) {
      const grade = countsAs(test);
      const isOld = hoursBetween(test.when, now) > validDays * 24;
      return {
        ...{ kind: 'read', test, grade, fails: grade !== null && isFailure(grade) },
        again: asked === undefined ? null : isOld ? 'too old' : 'other conditions',
        clearsUntil: new Date(Date.parse(test.when) + validDays * 86_400_000).toISOString(),
      };
    }
    return asked === undefined
      ? { kind: 'not needed' }
      : { kind: 'missing', blocksWetWork: asked.blocksWetWork };
  };
  return standing.colours.map((colour) => {
    const asked = required.filter((test) => test.colour === colour.colour);
    const made = standing.dyeTests.filter((test) => test.colour === colour.colour).map(placed);
    const known: readonly Placed[] = [...asked, ...made];
    const sites = known
      .filter((one, index) => known.findIndex((other) => siteRank(other) === siteRank(one)) === index)
      .map(({ side, atUrinePlace }) => ({ side, atUrinePlace }))
      .sort((a, b) => siteRank(a) - siteRank(b));
    const blotAt = ({ liquid, agents }: Pick<Placed, 'liquid' | 'agents'>, site: Site): Blot | null => {
      const place = { colour: colour.colour, liquid, agents, ...site };
      if (!known.some((one) => isSame(one, place))) return null;
      const asks = asked.find((test) => isSame(test, place));
      const made = standing.dyeTests.findLast((test) => isSame(placed(test), place));
      const required = asks ?? (made && asMade(made));
      return { place: { colour: colour.colour, liquid, ...site, required }, state: stateOf(place) };
    };
    const rows = testLiquids.flatMap((liquid) => {
      const here = known.filter((one) => one.liquid === liquid);
      return here
        .filter((one, index) => here.findIndex((other) => isOneLiquid(one, other)) === index)
        .map(({ agents }) => ({
          ...{ liquid, agents: liquid === 'spotter' ? agents : undefined },
          blots: sites.map((site) => blotAt({ liquid, agents }, site)),
        }));
    });
    return { colour, sites, rows };
  });
}
