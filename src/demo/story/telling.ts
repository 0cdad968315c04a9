import type {
  Agent,
  Construction,
  Dye,
  Fibre,
  FibreShares,
  FindingCode,
  Grade,
  TestLiquid,
} from '../../core/wash/index.ts';
import {
  firstSettings,
  handsFor,
  planFingerprint,
  planOf,
  type RugFact,
  type RugFactOf,
  stepId,
} from '../../dossier/index.ts';
import type { ByAnother, PhotographedBlot, View } from './moment.ts';

/** Short ways to tell a rug's story; each gives the fact that a person would have recorded. */

export const measured = (
  lengthMm: number,
  widthMm: number,
  shape: RugFactOf<'RugMeasured'>['shape'] = 'rectangle',
  occasion: 'intake' | 'after work' = 'intake',
): RugFact => ({
  type: 'RugMeasured',
  occasion,
  shape,
  lengthsMm: [lengthMm - 6, lengthMm, lengthMm + 8],
  widthsMm: [widthMm, widthMm + 5, widthMm - 4],
  fringeStartMm: shape === 'round' ? 0 : 60,
  fringeEndMm: shape === 'round' ? 0 : 55,
  pileHeightMm: 8,
  uncertaintyMm: 5,
});

export const weighed = (massKg: number, airRh = 0.5, airC = 19): RugFact => ({
  type: 'RugWeighed',
  massKg,
  airRh,
  airC,
  restedADay: true,
  occasion: 'intake',
});

export const lookedOver: RugFact = {
  type: 'ConditionSurveyed',
  occasion: 'intake',
  sides: 'face and back',
  light: 'north window and hand lamp from the side',
};

export const pictured = (
  photo: string,
  widthPx: number,
  heightPx: number,
  shows: RugFactOf<'PhotographTaken'>['shows'] = 'face',
): RugFact => ({ type: 'PhotographTaken', photo, widthPx, heightPx, shows, occasion: 'intake' });

export const identified = (
  construction: Construction,
  pile: FibreShares,
  warp: Fibre,
  weft: Fibre,
  origin: string,
  years: readonly [number, number],
): RugFact => ({
  type: 'RugIdentified',
  claims: [
    { about: 'construction', construction, evidence: 'seen', confidence: 'certain' },
    { about: 'pile', fibres: pile, evidence: 'burn test', confidence: 'certain' },
    { about: 'warp', fibre: warp, evidence: 'burn test', confidence: 'certain' },
    { about: 'weft', fibre: weft, evidence: 'microscope', confidence: 'probable' },
    { about: 'origin', words: origin, evidence: 'comparison', confidence: 'possible' },
    {
      about: 'period',
      fromYear: years[0],
      untilYear: years[1],
      evidence: 'comparison',
      confidence: 'probable',
    },
  ],
});

export const noted = (
  finding: FindingCode,
  certainty: 'seen' | 'suspected' | 'ruled out' = 'seen',
): RugFact => ({
  type: 'FindingNoted',
  finding,
  certainty,
  evidence: 'seen',
});

export interface DemoColour {
  readonly colour: string;
  readonly name: string;
  readonly looks: string;
  readonly dyeClass: Dye;
  readonly light?: boolean;
}

export const coloursNamed = (...colours: readonly DemoColour[]): RugFact => ({
  type: 'ColoursNamed',
  colours: colours.map(({ colour, name, looks, dyeClass, light }) => ({
    colour,
    name,
    looks,
    dyeClass,
    kind: 'field colour',
    besideLightField: light ?? false,
    atUrinePlace: false,
  })),
});

/** A reading of one liquid, with clean control. */
export const blot = (
  colour: string,
  liquid: TestLiquid,
  staining: Grade,
  how: {
    readonly ph?: number;
    readonly temperatureC?: number;
    readonly minutes?: number;
    readonly side?: 'face' | 'back';
    readonly strengthGPerL?: number;
    readonly colourChange?: Grade;
    readonly agents?: readonly Agent[];
  } = {},
): RugFact => ({
  type: 'DyeTested',
  colour,
  side: how.side ?? 'face',
  liquid,
  ...(how.agents === undefined ? {} : { agents: how.agents }),
  ...(how.ph === undefined ? {} : { ph: how.ph }),
  ...(how.temperatureC === undefined ? {} : { temperatureC: how.temperatureC }),
  ...(how.minutes === undefined ? {} : { minutes: how.minutes }),
  ...(how.strengthGPerL === undefined ? {} : { strengthGPerL: how.strengthGPerL }),
  reading: {
    kind: 'graded',
    by: 'eye',
    staining,
    control: '5',
    ...(how.colourChange === undefined ? {} : { colourChange: how.colourChange }),
  },
  photos: [],
});

/** A blot laid under the weave card and graded from its photograph. */
export const photographedBlot = (
  seed: number,
  stained: string | null,
  of: PhotographedBlot['of'],
): PhotographedBlot => ({ kind: 'photographed blot', seed, stained, of });

/** Every test the plan still asks for, read with the same grade: a day at the bench. */
const everyMissingBlot =
  (grades: Readonly<Record<string, Grade>>) =>
  ({ standing, settings, now }: View): RugFact | null => {
    const plan = planOf(standing, settings, now);
    const test = plan.ok ? plan.value.missingDyeTests[0] : undefined;
    if (test === undefined) return null;
    return {
      ...blot(test.colour, test.liquid, grades[test.colour] ?? '5', {
        side: test.side,
        minutes: test.minutes ?? 10,
        ...(test.pH === undefined ? {} : { ph: test.pH }),
        ...(test.temperatureC === undefined ? {} : { temperatureC: test.temperatureC }),
        ...(test.strengthGPerL === undefined ? {} : { strengthGPerL: test.strengthGPerL }),
        colourChange: '5',
      }),
      ...(test.atUrinePlace ? { atUrinePlace: true } : {}),
    } as RugFact;
  };

export const planOnRecord = ({ standing, settings, now }: View): RugFact | null => {
  const plan = planOf(standing, settings, now);
  if (!plan.ok) return null;
  const { rulebook, method } = plan.value;
  return {
    type: 'PlanAgreed',
    rulebook,
    method,
    fingerprint: planFingerprint(plan.value),
    plan: { ...plan.value },
  };
};

export const quoted = (washMinor: number, ceilingMinor: number): RugFact => ({
  type: 'PriceQuoted',
  lines: [{ words: 'Wash, rinse, dry and finish', amount: { amountMinor: washMinor, currency: 'EUR' } }],
  notToExceed: { amountMinor: ceilingMinor, currency: 'EUR' },
});

export const consented =
  (ceilingMinor: number, words: string) =>
  ({ standing, now }: View): RugFact | null => {
    const plan = standing.visits.at(-1)?.plan;
    if (plan === null || plan === undefined) return null;
    const risks = (plan.plan as { readonly consents?: readonly { readonly text: string }[] }).consents ?? [];
    return {
      type: 'ConsentGiven',
      plan: plan.fingerprint,
      paper: plan.fingerprint,
      risks: risks.map(({ text }) => text),
      notToExceed: { amountMinor: ceilingMinor, currency: 'EUR' },
      agreed: { how: 'spoken', words, spokenAt: now, witness: 'Ines Varga' },
    };
  };

/** Starts the next open step of the agreed plan, or finishes the one under way. */
const nextAct = ({ standing, now }: View): RugFact | ByAnother | null => {
  const visit = standing.visits.at(-1);
  const plan = visit?.plan?.plan as
    | {
        readonly steps: readonly {
          readonly order: number;
          readonly kind: never;
          readonly wet: boolean;
          readonly people: number;
        }[];
      }
    | undefined;
  if (visit === undefined || plan === undefined) return null;
  const running = visit.steps.find(({ started, done }) => started !== null && done === null);
  if (running !== undefined) return { type: 'StepDone', step: running.step };
  const done = new Set(visit.steps.map(({ step }) => step));
  const next = plan.steps.find(
    (step) => !done.has(stepId(step)) && !['dry', 'fringe', 'set pile and block'].includes(step.kind),
  );
  if (next === undefined) return null;
  const step = stepId(next);
  // Whoever does not tell the moment is at hand to help.
  if (next.people > 1 && handsFor(visit, step, '', { now, settings: firstSettings }).length === 0) {
    return { by: 'mirela', fact: { type: 'HandLent', step } };
  }
  return { type: 'StepStarted', step, wets: next.wet };
};

export const reading = (massKg: number, how: Partial<RugFactOf<'DryingReading'>> = {}): RugFact => ({
  type: 'DryingReading',
  massKg,
  airRh: 0.42,
  airC: 29,
  photos: [],
  ...how,
});

/** Reads every test the plan still asks for, colour by colour, with these grades. */
export const tests = (grades: Parameters<typeof everyMissingBlot>[0]) =>
  Array.from({ length: 40 }, () => everyMissingBlot(grades));

/** So many starts and ends of the steps of the agreed plan, one after another. */
export const acts = (count: number) => Array.from({ length: count }, () => nextAct);

/** Starts and ends steps until one of this kind is under way. */
export const actsUntil = (kind: string) =>
  Array.from(
    { length: 40 },
    () =>
      (view: View): RugFact | ByAnother | null =>
        view.standing.visits
          .at(-1)
          ?.steps.some(
            ({ step, done }) => done === null && step.replace(/^\d+-/, '') === kind.replaceAll(' ', '-'),
          )
          ? null
          : nextAct(view),
  );

export const drying = (hours: number) => ({ type: 'DryingExpected', hours }) as const;

export const eur = (amountMinor: number) => ({ amountMinor, currency: 'EUR' });
