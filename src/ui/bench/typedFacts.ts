import type {
  Construction,
  Dye,
  Fibre,
  FindingCode,
  Grade,
  PlanFacts,
  Route,
  Side,
  StainClass,
  TestLiquid,
} from '../../core/wash/index.ts';

export interface TypedColour {
  readonly id: string;
  readonly name: string;
  readonly dyeClass: Dye;
  readonly besideLightField: boolean;
}

export interface TypedTest {
  readonly id: string;
  readonly colour: string;
  readonly side: Side;
  readonly liquid: TestLiquid;
  readonly grade: Grade;
  readonly ph: number | null;
  readonly temperatureC: number | null;
  readonly minutes: number | null;
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
}

export const nothingKnown: TypedFacts = {
  route: 'rug in use',
  construction: 'unknown',
  pile: 'unknown',
  warp: 'unknown',
  weft: 'unknown',
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
    foundation: { warp: typed.warp, weft: typed.weft },
    ...(typed.construction === 'tufted' ? { latex: typed.latex } : {}),
    areaM2: Number(((lengthCm * widthCm) / 1e4).toFixed(4)),
    lengthM: lengthCm / 100,
    ...given('dryMassKg', typed.dryMassKg),
    ...given('pileHeightMm', typed.pileHeightMm),
    ...given('expectedDryingHours', typed.expectedDryingHours),
    colours: typed.colours.map(({ id, name, dyeClass, besideLightField }) => ({
      id,
      name: name.trim() === '' ? 'a colour' : name.trim(),
      kind: 'field colour',
      dyeClass,
      besideLightField,
    })),
    dyeTests: typed.tests.map(({ colour, side, liquid, grade, ph, temperatureC, minutes }) => ({
      colour,
      side,
      liquid,
      outcome: 'graded',
      grade,
      ...(liquid === 'acid rinse' ? { colourChangeGrade: grade } : {}),
      ageDays: 0,
      ...given('pH', ph),
      ...given('temperatureC', temperatureC),
      ...given('minutes', minutes),
    })),
    ...(typed.isLookedOver ? { findings: typed.findings.map((code) => ({ code })) } : {}),
    stains: typed.stains.map(({ id, stain, areaCm2 }) => ({
      id,
      class: stain,
      ...given('areaCm2', areaCm2),
    })),
  };
}
