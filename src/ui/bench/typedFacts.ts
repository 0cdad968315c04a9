import type {
  Agent,
  ColourKind,
  Construction,
  Dye,
  Fibre,
  FindingCode,
  Grade,
  PlanFacts,
  RequiredDyeTest,
  Route,
  Side,
  StainClass,
  TestLiquid,
} from '../../core/wash/index.ts';

export interface TypedColour {
  readonly id: string;
  readonly name: string;
  readonly kind: ColourKind;
  readonly dyeClass: Dye;
  readonly besideLightField: boolean;
}

export interface TypedTest {
  readonly id: string;
  readonly colour: string;
  readonly side: Side;
  readonly liquid: TestLiquid;
  /** Null until the blot has been read; then it proves nothing yet. */
  readonly grade: Grade | null;
  /** Change of the colour itself, asked for acid and spotters; null until it has been read. */
  readonly colourChange: Grade | null;
  readonly ph: number | null;
  readonly temperatureC: number | null;
  readonly minutes: number | null;
  /** What was in the liquid, where the plan asks for more than its name says. */
  readonly agents?: readonly Agent[];
  readonly strengthGPerL?: number;
  readonly atUrinePlace?: boolean;
}

export interface TypedStain {
  readonly id: string;
  readonly stain: StainClass;
  readonly areaCm2: number | null;
}

/** What somebody has typed at the bench; what is not known stays open and counts as its worst case. */
export interface TypedFacts {
  readonly route: Route;
  readonly construction: Construction;
  readonly pile: Fibre;
  readonly warp: Fibre;
  readonly weft: Fibre;
  /** Asked of tufted and hooked pieces. */
  readonly backing: Fibre;
  readonly lengthCm: number | null;
  readonly widthCm: number | null;
  readonly dryMassKg: number | null;
  readonly pileHeightMm: number | null;
  readonly latex: 'sound' | 'failing' | 'unknown';
  readonly expectedDryingHours: number | null;
  readonly isLookedOver: boolean;
  readonly findings: readonly FindingCode[];
  readonly colours: readonly TypedColour[];
  readonly tests: readonly TypedTest[];
  readonly stains: readonly TypedStain[];
  /** A bath meant for it beyond what the plan proposes; none where no agent is chosen. */
  readonly bathAgents: readonly Agent[];
  readonly bathPh: number | null;
}

/** Pieces that have a cloth behind them. */
export const hasBacking = (construction: Construction): boolean =>
  construction === 'tufted' || construction === 'hooked';

/** Acid and spotters are also read for the change of the colour itself. */
export const showsColourChange = (liquid: TestLiquid): boolean =>
  liquid === 'acid rinse' || liquid === 'spotter';

export const nothingKnown: TypedFacts = {
  route: 'rug in use',
  construction: 'unknown',
  pile: 'unknown',
  warp: 'unknown',
  weft: 'unknown',
  backing: 'unknown',
  lengthCm: null,
  widthCm: null,
  dryMassKg: null,
  pileHeightMm: null,
  latex: 'unknown',
  expectedDryingHours: null,
  isLookedOver: false,
  findings: [],
  colours: [],
  tests: [],
  stains: [],
  bathAgents: [],
  bathPh: null,
};

const given = <Key extends string>(key: Key, value: number | null) =>
  value === null ? {} : ({ [key]: value } as { readonly [K in Key]: number });

/** The facts a plan is made from, or null while the size is not known: without an area there are no amounts. */
export function planFactsOfTyped(typed: TypedFacts): PlanFacts | null {
  const { lengthCm, widthCm } = typed;
  if (lengthCm === null || widthCm === null) return null;
  return {
    route: typed.route,
    construction: typed.construction,
    pile: { [typed.pile]: 1 },
    foundation: {
      ...{ warp: typed.warp, weft: typed.weft },
      ...(hasBacking(typed.construction) ? { backing: typed.backing } : {}),
    },
    ...(typed.construction === 'tufted' ? { latex: typed.latex } : {}),
    areaM2: Number(((lengthCm * widthCm) / 1e4).toFixed(4)),
    lengthM: lengthCm / 100,
    ...given('dryMassKg', typed.dryMassKg),
    ...given('pileHeightMm', typed.pileHeightMm),
    ...given('expectedDryingHours', typed.expectedDryingHours),
    colours: typed.colours.map(({ id, name, kind, dyeClass, besideLightField }) => ({
      id,
      name: name.trim() === '' ? 'a colour' : name.trim(),
      kind,
      dyeClass,
      besideLightField,
    })),
    dyeTests: typed.tests.flatMap(({ id: _id, grade, colourChange, ph, temperatureC, minutes, ...test }) =>
      grade === null
        ? []
        : [
            {
              ...test,
              outcome: 'graded' as const,
              grade,
              ...(colourChange === null ? {} : { colourChangeGrade: colourChange }),
              ageDays: 0,
              ...given('pH', ph),
              ...given('temperatureC', temperatureC),
              ...given('minutes', minutes),
            },
          ],
    ),
    ...(typed.isLookedOver ? { findings: typed.findings.map((code) => ({ code })) } : {}),
    stains: typed.stains.map(({ id, stain, areaCm2 }) => ({
      id,
      class: stain,
      ...given('areaCm2', areaCm2),
    })),
    plannedBaths:
      typed.bathAgents.length === 0
        ? []
        : [{ purpose: 'your own bath', agents: typed.bathAgents, ...given('pH', typed.bathPh) }],
  };
}

/** A test the plan asks for, as a test still to be read under just those conditions. */
export const typedTestOf = (id: string, asked: RequiredDyeTest): TypedTest => ({
  id,
  colour: asked.colour,
  side: asked.side,
  liquid: asked.liquid,
  grade: null,
  colourChange: null,
  ph: asked.pH ?? null,
  temperatureC: asked.temperatureC ?? null,
  minutes: asked.minutes ?? null,
  agents: asked.agents,
  ...(asked.atUrinePlace ? { atUrinePlace: true } : {}),
  ...(asked.strengthGPerL === undefined ? {} : { strengthGPerL: asked.strengthGPerL }),
});
