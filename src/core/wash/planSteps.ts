import { dryMassOf } from './findingLimits.ts';
import type { Bounds } from './limit.ts';
import type { Fibre, PlanFacts } from './planFacts.ts';
import { bookOf, type Rulebook, waterLPerM2 } from './rulebook.ts';
import type { StepRow } from './ruleTables.ts';
import { flushAmount, spotAmounts } from './spotAmounts.ts';
import {
  bandWithin,
  needsVentilation,
  type StainTreatment,
  stainTreatments,
  treatmentBand,
  warmth,
} from './stainSteps.ts';
import type { Amount, PlanStep } from './washPlan.ts';

type Draft = Omit<PlanStep, 'order'>;

const setting = 'workshop-setting';

/** No more than what the dyes were tested with, or than the wet minutes hold. */
const within = (amount: Amount, most: number): Amount => {
  const cap = Math.floor(most * 10 + 1e-9) / 10;
  return { ...amount, least: Math.min(amount.least, cap), most: Math.min(amount.most, cap) };
};

/** Quantities for this rug; the keys stand in data/wash/steps.json. */
function amountOf(key: string, facts: PlanFacts, bounds: Bounds): Amount {
  const { areaM2 } = facts;
  const book = bookOf(facts);
  const { shop } = book;
  const perArea = (
    agent: string,
    unit: Amount['unit'],
    range: { readonly least: number; readonly most: number },
  ) => ({
    agent,
    least: Math.round(range.least * areaM2 * 10) / 10,
    most: Math.round(range.most * areaM2 * 10) / 10,
    unit,
    source: setting,
  });
  const [name = key, use = ''] = key.split(':');
  switch (name) {
    case 'dusting':
      return perArea('dusting', 'min', shop.dustingMinPerM2);
    case 'washing':
      return within(perArea('washing and rinsing', 'min', shop.washAndRinseMinPerM2), bounds.wetMinutes);
    case 'finishing':
      return perArea('finishing', 'min', shop.finishingMinPerM2);
    case 'detergent':
      return within(
        perArea('detergent concentrate', 'g', shop.detergentGPerM2),
        bounds.strengthGPerL * waterLPerM2(book, bounds.method, 'wash') * areaM2,
      );
    case 'citric acid':
      return perArea('citric acid', 'g', shop.citricAcidGPerM2);
    case 'water': {
      const litres = waterLPerM2(book, bounds.method, use);
      return perArea(`water, at most ${bounds.temperatureC} °C`, 'L', { least: litres, most: litres });
    }
    case 'running': {
      const minutes = (waterLPerM2(book, bounds.method, use) * areaM2) / book.rinse.waterLPerMin;
      const least = Math.round(minutes * 10) / 10;
      return { agent: 'water running in', least, most: least, unit: 'min', source: setting };
    }
    case 'each fill': {
      const { workMin, drainMin } = book.rinse;
      const [least, most] = [workMin.least + drainMin.least, workMin.most + drainMin.most];
      return { agent: 'working and draining each fill', least, most, unit: 'min', source: setting };
    }
    case 'urine flush':
      return flushAmount(
        (facts.stains ?? []).filter((stain) => stain.class === 'urine'),
        book,
      );
    case 'extraction':
      return { agent: 'extraction', ...shop.extractionMin, unit: 'min', source: setting };
    case 'water out': {
      const left = shop.waterAfterExtraction[bounds.extraction];
      const kg = Math.round(dryMassOf(facts).kg * (shop.saturatedWaterKgPerKg - left) * 10) / 10;
      return {
        agent: 'water to take out',
        least: 0,
        most: Math.max(0, kg),
        unit: 'kg',
        source: 'common-practice',
      };
    }
    default:
      throw new Error(`no amount ${key}`);
  }
}

/** The aims of the pile's chief fibre; the other fibres only cap. */
function aimsOf(facts: PlanFacts) {
  const { fibres } = bookOf(facts);
  const [chief] = Object.entries(facts.pile ?? {}).sort(([, a], [, b]) => b - a);
  return fibres[(chief?.[0] ?? 'wool') as Fibre] ?? fibres.wool;
}

function targetPh(ph: 'bath' | 'final' | undefined, facts: PlanFacts, bounds: Bounds) {
  if (ph === undefined) return null;
  const aims = aimsOf(facts);
  const [aim, cap] = ph === 'bath' ? [aims?.bathAim, bounds.bathPh] : [aims?.finalAim, bounds.finalPh];
  return bandWithin(aim, cap) ?? bandWithin(undefined, cap);
}

const filled = (text: string, bounds: Bounds) =>
  text
    .replace('{agitation}', bounds.agitation)
    .replace('{extraction}', bounds.extraction)
    .replace('{posture}', bounds.dryingPosture);

function fromRow(row: StepRow, facts: PlanFacts, bounds: Bounds): Draft {
  const ph = targetPh(row.ph, facts, bounds);
  const agents = row.wet ? bounds.protection : [];
  return {
    kind: row.kind,
    wet: row.wet,
    what: filled(row.what, bounds),
    agents: row.agents,
    amounts: row.amounts.map((key) => amountOf(key, facts, bounds)),
    ...(ph === null ? {} : { targetPh: ph }),
    ...(row.warm === true ? { temperatureC: warmth(bookOf(facts), bounds) } : {}),
    ...(row.dwellMinutes === undefined ? {} : { dwellMinutes: row.dwellMinutes }),
    tools: row.tools.map((tool) => filled(tool, bounds)),
    protection: [...new Set([...row.protection, ...agents])],
    people: bounds.people,
    stopConditions: row.stops,
    log: row.log,
    source: row.source,
  };
}

function fromTreatment(book: Rulebook, treatment: StainTreatment, bounds: Bounds): Draft {
  const { phase, golden, what, agents, dwellMinutes, mostC, strength, stain, never, source } = treatment;
  const wet = agents.some((agent) => agent !== 'dry solvent');
  const band = treatmentBand(treatment, bounds);
  const air = needsVentilation(agents) || agents.includes('dry solvent') ? ' Ventilate.' : '';
  const chemical = agents.some((agent) => agent !== 'water');
  return {
    kind: phase,
    wet,
    what: `${what}${strength === undefined ? '' : ` Strength ${strength}.`}${air} Never: ${never.join(', ')}.`,
    agents,
    amounts: spotAmounts(treatment, bounds, book),
    ...(band === null ? {} : { targetPh: band }),
    ...(wet ? { temperatureC: warmth(book, bounds, mostC) } : {}),
    ...(dwellMinutes === 0 ? {} : { dwellMinutes }),
    tools: ['white cloth', 'spatula'],
    protection: [...new Set([...(chemical ? ['gloves', 'goggles'] : []), ...bounds.protection])],
    people: bounds.people,
    stopConditions: wet ? ['cloth grade', 'wet minutes used'] : [],
    log: ['photograph before and after', 'minutes'],
    ...{ source, stain, golden },
  };
}

/** Dwells together must fit the wet minutes: the second wash goes first, then all shrink alike. */
function withinWetMinutes(steps: readonly Draft[], bounds: Bounds): readonly Draft[] {
  const wetDwell = (some: readonly Draft[]) =>
    some.reduce((sum, { wet, dwellMinutes }) => sum + (wet ? (dwellMinutes ?? 0) : 0), 0);
  const fitting =
    wetDwell(steps) > bounds.wetMinutes ? steps.filter(({ kind }) => kind !== 'second wash') : steps;
  const share = Math.min(1, bounds.wetMinutes / Math.max(wetDwell(fitting), 1));
  return fitting.map((step) => {
    if (!step.wet || step.dwellMinutes === undefined) return step;
    const shrunk = Math.floor(step.dwellMinutes * share * 10) / 10;
    const inBath = step.kind === 'wash' || step.kind === 'second wash';
    return { ...step, dwellMinutes: inBath ? Math.min(shrunk, bounds.bathMinutes) : shrunk };
  });
}

/**
 * The steps this rug's plan allows, in the order of the trade, with quantities for its area and mass.
 *
 * @param facts - what is known of the rug
 * @param bounds - the meet of all limits; its method decides which steps there are
 * @source aic-textile-wiki, part VI.D for the skeleton; quantities are workshop settings (data/wash)
 */
export function planSteps(facts: PlanFacts, bounds: Bounds): readonly PlanStep[] {
  const book = bookOf(facts);
  const drafts = book.steps
    .filter(({ methods, acts, unlessActs }) => {
      if (!methods.includes(bounds.method)) return false;
      if (unlessActs?.some((act) => bounds.requiredActs.includes(act)) === true) return false;
      return acts === undefined || acts.some((act) => bounds.requiredActs.includes(act));
    })
    .flatMap((row): readonly Draft[] => {
      if (row.kind !== 'pre-spot' && row.kind !== 'stain treatment') return [fromRow(row, facts, bounds)];
      const { ready } = stainTreatments(facts, bounds, row.kind);
      const wetAllowed = bounds.method !== 'dry only';
      return ready.map((one) => fromTreatment(book, one, bounds)).filter(({ wet }) => wetAllowed || !wet);
    });
  return withinWetMinutes(drafts, bounds).map((step, index) => ({ order: index + 1, ...step }));
}
