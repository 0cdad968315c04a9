import type { MixAmount, MixScenario } from '../contract/mixShape.ts';
import {
  type AgentAmount,
  type BathRecipe,
  bathPh,
  carryOver,
  type Dosed,
  type DoseUncertainty,
  daviesMostMolPerL,
  dose,
  effluent,
  type GasWarning,
  gasWarnings,
  hardnessConsumed,
  peroxideVolumes,
  phRange,
  readAgentName,
  rinsePlans,
  solutionOf,
  surfactantByArea,
  surfactantByBath,
  usualDoseUncertainty,
  waterToReckonWith,
} from '../core/chemistry/index.ts';
import { done, type Problem, type Result } from '../units/index.ts';

interface Span {
  readonly least: number;
  readonly most: number;
}

/** What the names of a scenario leave open, and a figure that stands outside its law. */
export type MixNote =
  | {
      readonly note: 'strength assumed';
      readonly agent: string;
      readonly of: string;
      readonly strength: number;
    }
  | { readonly note: 'water of crystals assumed'; readonly agent: string; readonly of: string }
  | { readonly note: 'ideal at such strength'; readonly ionicStrengthMolPerL: number };

type Value<Answered> =
  Extract<Answered, { readonly ok: true }> extends { readonly value: infer Held } ? Held : never;

/** Questions beside the pH of the bath; each is answered under its own name. */
export interface MixParts {
  readonly carryOver?: Value<ReturnType<typeof carryOver>>;
  readonly effluent?: Value<ReturnType<typeof effluent>>;
  readonly hardness?: Value<ReturnType<typeof hardnessConsumed>>;
  readonly surfactant?:
    | Value<ReturnType<typeof surfactantByArea>>
    | Value<ReturnType<typeof surfactantByBath>>;
  readonly rinse?: Value<ReturnType<typeof rinsePlans>>;
  readonly peroxide?: { readonly volumes: number };
}

export interface MixAnswer {
  readonly pH: number;
  readonly ionicStrengthMolPerL: number;
  readonly bufferCapacityMolPerLPerPh: number;
  /** Where the strength of the agents and the water may truly put it. */
  readonly phInterval: readonly [number, number];
  readonly dosed: {
    readonly grams: number;
    readonly interval: readonly [number, number];
    readonly densityGPerMl: number | null;
  } | null;
  /** What was assumed of water nobody stated, with the pH at both its ends. */
  readonly assumed: { readonly alkalinityAssumed: Span; readonly phRange: readonly number[] } | null;
  readonly parts: MixParts;
  readonly warnings: readonly GasWarning[];
  readonly notes: readonly MixNote[];
}

const thousand = (value: number | undefined, by: number) => (value === undefined ? undefined : value * by);

/** An amount in grams or millilitres, whatever unit it is written in. */
function amountOf(written: MixAmount): Result<AgentAmount, Problem> {
  const { agent, grams, kilograms, milligrams, moles, millilitres, litres, strength, densityGPerMl } =
    written;
  let byMoles: number | undefined;
  if (moles !== undefined) {
    const named = readAgentName(agent, strength !== undefined);
    if (!named.ok) return named;
    byMoles = (moles * named.value.agent.molarMassGPerMol) / (strength ?? named.value.strength);
  }
  return done({
    agent,
    grams: grams ?? thousand(kilograms, 1000) ?? thousand(milligrams, 0.001) ?? byMoles,
    millilitres: millilitres ?? thousand(litres, 1000),
    strength,
    densityGPerMl,
  });
}

function amountsOf(written: readonly MixAmount[]): Result<readonly AgentAmount[], Problem> {
  const all: AgentAmount[] = [];
  for (const one of written) {
    const read = amountOf(one);
    if (!read.ok) return read;
    all.push(read.value);
  }
  return done(all);
}

type Answer<Held> = Result<Held, Problem> | null;

function partsOf(
  bath: BathRecipe,
  asked: MixScenario,
  uncertainty: DoseUncertainty,
): Result<MixParts, Problem> {
  const { carryOver: held, effluent: waste, hardness, surfactant, rinse, peroxide } = asked;
  const fresh =
    held !== undefined && held.freshLitres > 0 ? { ...bath, litres: held.freshLitres, add: [] } : null;
  const others: BathRecipe[] = [];
  for (const other of waste?.with ?? []) {
    const add = amountsOf(other.add);
    if (!add.ok) return add;
    others.push({ ...bath, ...other, add: add.value });
  }
  const dosedSurfactant =
    surfactant === undefined
      ? null
      : 'areaM2' in surfactant
        ? surfactantByArea(surfactant.areaM2, bath.litres)
        : surfactantByBath(
            surfactant.activeGPerL,
            bath.litres,
            surfactant.strength,
            surfactant.strengthUncertainty,
          );
  const answers: { readonly [Name in keyof MixParts]-?: Answer<NonNullable<MixParts[Name]>> } = {
    carryOver: held === undefined ? null : carryOver(bath, held, fresh, held.pH, held, uncertainty),
    effluent: waste === undefined ? null : effluent([bath, ...others], waste, waste),
    hardness: hardness === undefined ? null : hardnessConsumed(hardness, bath.litres, hardness.agent),
    surfactant: dosedSurfactant,
    rinse: rinse === undefined ? null : rinsePlans(rinse.massKg, rinse.end, rinse.prices ?? null),
    peroxide: peroxide === undefined ? null : done({ volumes: peroxideVolumes(peroxide.molPerL) }),
  };
  const told: Record<string, unknown> = {};
  for (const [name, answer] of Object.entries(answers)) {
    if (answer === null) continue;
    if (!answer.ok) return answer;
    told[name] = answer.value;
  }
  return done(told as MixParts);
}

function notesOf(
  amounts: readonly { readonly agent: string; readonly strength?: number | undefined }[],
): readonly MixNote[] {
  return amounts.flatMap(({ agent, strength }): readonly MixNote[] => {
    const named = readAgentName(agent, strength !== undefined);
    if (!named.ok || named.value.assumed === null) return [];
    const { assumed, agent: of } = named.value;
    return assumed === 'strength'
      ? [{ note: 'strength assumed', agent, of: of.agent, strength: named.value.strength }]
      : [{ note: 'water of crystals assumed', agent, of: of.agent }];
  });
}

/**
 * Everything a scenario asks, or the first thing that is wrong with it.
 *
 * @refuses as the chemistry refuses; out-of-range - what may go to the sewer is not guessed from unknown water
 * @source none: the questions are put to core/chemistry
 */
export function mixAnswer(scenario: MixScenario): Result<MixAnswer, Problem> {
  const { litres, temperatureC, activity, openToAir, water, target } = scenario;
  const add = amountsOf(scenario.add);
  if (!add.ok) return add;
  const { alkalinity } = waterToReckonWith(null, '');
  const stated = water.alkalinityMgPerLCaCO3;
  const recipe: BathRecipe = {
    ...{ litres, temperatureC, activity, openToAir, add: add.value },
    alkalinityMgPerLCaCO3: stated ?? alkalinity.value,
  };
  const uncertainty: DoseUncertainty = {
    strength: target?.strengthUncertainty ?? usualDoseUncertainty.strength,
    alkalinity: stated === undefined ? 1 : (target?.alkalinityUncertainty ?? usualDoseUncertainty.alkalinity),
  };
  let whole = recipe;
  let dosed: MixAnswer['dosed'] = null;
  if (target !== undefined) {
    const { agent, strength } = target;
    const what: Dosed = strength === undefined ? agent : { name: agent, shares: [{ agent, strength }] };
    const found = dose(recipe, what, target.pH, uncertainty);
    if (!found.ok) return found;
    const named = readAgentName(agent, strength !== undefined);
    const isAsNamed = strength === undefined || strength === 1;
    const usual = named.ok && isAsNamed ? named.value.densityGPerMl : null;
    dosed = { ...found.value, densityGPerMl: target.densityGPerMl ?? usual };
    whole = { ...recipe, add: [...recipe.add, { agent, strength, grams: found.value.grams }] };
  }
  const solution = solutionOf(whole);
  if (!solution.ok) return solution;
  const found = bathPh(solution.value);
  if (!found.ok) return found;
  const { pH, ionicStrengthMolPerL, bufferCapacityMolPerLPerPh } = found.value;
  const range = phRange(whole, uncertainty, stated === undefined ? alkalinity : null);
  if (!range.ok) return range;
  const parts = partsOf(whole, scenario, { ...uncertainty, strength: usualDoseUncertainty.strength });
  if (!parts.ok) return parts;
  // Of water nobody stated the softest is taken: it leaves a bath the most acid, and gas comes of acid.
  const softest =
    stated === undefined ? solutionOf({ ...whole, alkalinityMgPerLCaCO3: alkalinity.least }) : solution;
  if (!softest.ok) return softest;
  const worst = bathPh(softest.value);
  if (!worst.ok) return worst;
  const ends = [alkalinity.least, alkalinity.most].flatMap((alkalinityMgPerLCaCO3) => {
    const end = solutionOf({ ...whole, alkalinityMgPerLCaCO3 });
    const at = end.ok ? bathPh(end.value) : end;
    return at.ok ? [at.value.pH] : [];
  });
  const isBeyond = activity === 'ideal' && ionicStrengthMolPerL > daviesMostMolPerL;
  return done({
    ...{ pH, ionicStrengthMolPerL, bufferCapacityMolPerLPerPh, dosed, parts: parts.value },
    phInterval: [range.value.least, range.value.most],
    assumed:
      stated === undefined
        ? { alkalinityAssumed: { least: alkalinity.least, most: alkalinity.most }, phRange: ends }
        : null,
    warnings: gasWarnings(worst.value, softest.value.acidsMolPerL),
    notes: [
      ...notesOf(whole.add),
      ...(isBeyond ? [{ note: 'ideal at such strength' as const, ionicStrengthMolPerL }] : []),
    ],
  });
}
