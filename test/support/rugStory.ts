import type { RequiredDyeTest } from '../../src/core/wash/index.ts';
import {
  type Asked,
  decide,
  firstSettings,
  type RugEntry,
  type RugFact,
  type RugProblem,
  type RugStanding,
  standingOf,
} from '../../src/dossier/index.ts';

/** Every story starts here. */
export const storyStart = '2026-03-02T08:00:00.000Z';

export const minutesLater = (instant: string, minutes: number): string =>
  new Date(Date.parse(instant) + minutes * 60_000).toISOString();

/** Facts as entries, a minute apart; for folds, where nobody judges. */
export function entriesOf(facts: readonly RugFact[], start = storyStart): readonly RugEntry[] {
  return facts.map((fact, index) => ({
    id: `e${index + 1}`,
    stream: 'rug/r1',
    revision: index + 1,
    at: minutesLater(start, index),
    by: 'tobin',
    version: 1,
    fact,
    seal: `seal-${index + 1}`,
  }));
}

const settings: Asked['settings'] = {
  ...firstSettings,
  currency: 'EUR',
  washersAuthority: { amountMinor: 10_000_000, currency: 'EUR' },
};

export const asOwner = (now: string): Asked => ({
  now,
  person: { person: 'mirela', roles: ['owner', 'washer'] },
  settings,
});
export const asWasher = (now: string): Asked => ({
  now,
  person: { person: 'tobin', roles: ['washer'] },
  settings,
});

type Told = RugFact | ((standing: RugStanding, asked: Asked) => RugFact);

/** A rug's story told through the decisions: given what happened, when this is asked, then that. */
export class RugStory {
  readonly entries: readonly RugEntry[];
  readonly now: string;

  constructor(entries: readonly RugEntry[] = [], now: string = storyStart) {
    this.entries = entries;
    this.now = now;
  }

  get standing(): RugStanding {
    return standingOf(this.entries);
  }

  /** Records facts one after another; a refusal is a mistake in the test. */
  given(...facts: readonly Told[]): RugStory {
    let told: RugStory = this;
    for (const fact of facts) {
      const asked = asOwner(told.now);
      const made = typeof fact === 'function' ? fact(told.standing, asked) : fact;
      const decided = decide(told.standing, made, asked);
      if (!decided.ok) {
        throw new Error(
          `given ${made.type}: ${decided.problem.code} ${JSON.stringify(decided.problem.facts)}`,
        );
      }
      const revision = told.entries.length + 1;
      const entry: RugEntry = {
        id: `e${revision}`,
        stream: 'rug/r1',
        revision,
        at: told.now,
        by: 'mirela',
        version: 1,
        fact: made,
        seal: `seal-${revision}`,
      };
      told = new RugStory([...told.entries, entry], minutesLater(told.now, 1));
    }
    return told;
  }

  later(minutes: number): RugStory {
    return new RugStory(this.entries, minutesLater(this.now, minutes));
  }

  /** What is refused of a fact, or null when it may be recorded. */
  refuses(fact: Told, asked: Asked = asOwner(this.now)): RugProblem | null {
    const made = typeof fact === 'function' ? fact(this.standing, asked) : fact;
    const decided = decide(this.standing, made, asked);
    return decided.ok ? null : decided.problem;
  }
}

export const opened: RugFact = { type: 'DossierOpened', number: 1, title: 'Runner with three medallions' };
export const received: RugFact = {
  type: 'RugReceived',
  visit: 'v1',
  consignment: 'c1',
  client: 'almqvist',
  tag: '41',
  scope: ['wash'],
  route: 'rug in use',
  reason: 'Dusty.',
  authority: 'owner',
  declaredValue: { amountMinor: 100_000, currency: 'EUR' },
};
export const measured: RugFact = {
  type: 'RugMeasured',
  occasion: 'intake',
  shape: 'rectangle',
  lengthsMm: [2000, 2004, 1996],
  widthsMm: [1000, 1002, 998],
  pileHeightMm: 8,
  uncertaintyMm: 5,
};
export const weighed: RugFact = {
  type: 'RugWeighed',
  massKg: 7,
  airRh: 0.5,
  airC: 20,
  restedADay: true,
  occasion: 'intake',
};
export const lookedOver: RugFact = {
  type: 'ConditionSurveyed',
  occasion: 'intake',
  sides: 'face and back',
  light: 'daylight from the north',
};
export const identified: RugFact = {
  type: 'RugIdentified',
  claims: [
    { about: 'construction', construction: 'knotted pile', evidence: 'seen', confidence: 'certain' },
    { about: 'pile', fibres: { wool: 1 }, evidence: 'burn test', confidence: 'certain' },
    { about: 'warp', fibre: 'cotton', evidence: 'burn test', confidence: 'certain' },
    { about: 'weft', fibre: 'wool', evidence: 'burn test', confidence: 'certain' },
  ],
};
export const coloursNamed: RugFact = {
  type: 'ColoursNamed',
  colours: [
    {
      colour: 'red',
      name: 'red, field',
      kind: 'field colour',
      dyeClass: 'acid',
      besideLightField: false,
      atUrinePlace: false,
    },
  ],
};

/** A rug about which everything is known but how its dyes behave. */
export const knownRug = (): RugStory =>
  new RugStory().given(opened, received, measured, weighed, lookedOver, identified, coloursNamed, {
    type: 'DryingExpected',
    hours: 20,
  });

/** A test the plan asks for, made just so and read by eye. */
export const blotHeld = (test: RequiredDyeTest, staining: '5' | '3-4' = '5'): RugFact => ({
  type: 'DyeTested',
  colour: test.colour,
  side: test.side,
  liquid: test.liquid,
  ...(test.agents.length === 0 ? {} : { agents: test.agents }),
  ...(test.pH === undefined ? {} : { ph: test.pH }),
  ...(test.strengthGPerL === undefined ? {} : { strengthGPerL: test.strengthGPerL }),
  ...(test.temperatureC === undefined ? {} : { temperatureC: test.temperatureC }),
  ...(test.minutes === undefined ? {} : { minutes: test.minutes }),
  reading: { kind: 'graded', by: 'eye', staining, colourChange: '5', control: '5' },
  photos: [],
});
