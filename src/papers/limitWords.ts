import {
  type Axis,
  type AxisValue,
  axes,
  type Bounds,
  noLimit,
  type PlanLimit,
  type WashPlan,
  withinOn,
} from '../core/wash/index.ts';
import { figure } from './measureWords.ts';
import type { FactRow } from './parts.ts';
import { sourceWords } from './sourceWords.ts';

/** What each axis of a plan's limits is called. */
export const axisWords = {
  method: 'Method, at wettest',
  bathPh: 'pH of every bath',
  finalPh: 'pH the rug is left at',
  temperatureC: 'Water, at most',
  temperatureStepK: 'Step between two waters',
  agitation: 'Agitation, at most',
  wetMinutes: 'Wet until extracted',
  bathMinutes: 'In the bath',
  strengthGPerL: 'Concentrate in the bath',
  totalWetHours: 'Wet until dry',
  extraction: 'Extraction, at most',
  dryingPosture: 'Drying posture',
  dryingTemperatureC: 'Drying air, at most',
  people: 'People, at least',
  forbiddenAgents: 'Never use',
  forbiddenPairs: 'Never together',
  forbiddenActs: 'Never do',
  requiredActs: 'Must be done',
  protection: 'To be worn',
  consents: 'Client is told of',
  signOffs: 'Sign-off by',
} as const satisfies { readonly [A in Axis]: string };

const units: { readonly [A in Axis]?: string } = {
  temperatureC: '°C',
  temperatureStepK: 'K',
  wetMinutes: 'min',
  bathMinutes: 'min',
  strengthGPerL: 'g/L',
  totalWetHours: 'h',
  dryingTemperatureC: '°C',
};
const capped: ReadonlySet<Axis> = new Set([
  'temperatureStepK',
  'wetMinutes',
  'bathMinutes',
  'strengthGPerL',
  'totalWetHours',
]);

/**
 * A value on one axis in words.
 *
 * @param axis - which limit
 * @param value - its value, in the unit of `Bounds`
 * @source none: wording of this project
 */
export function valueWords(axis: Axis, value: AxisValue): string {
  if (typeof value === 'string') return value === 'no liquid' ? 'no liquid may stay on the rug' : value;
  if (typeof value === 'number') {
    const shown = `${figure(value)} ${units[axis] ?? ''}`.trim();
    return capped.has(axis) ? `at most ${shown}` : shown;
  }
  if ('least' in value) return `${figure(value.least)} to ${figure(value.most)}`;
  return value.length === 0 ? 'nothing' : value.join(', ');
}

/** Whether a value says anything at all on its axis. */
const limits = <A extends Axis>(axis: A, bounds: Bounds): boolean =>
  !withinOn(axis, noLimit[axis], bounds[axis]);

/**
 * Why some limits are what they are: reason, what each comes from, rule, and the standard or setting behind
 * it. Limits that differ only in what they come from are told once.
 */
export function reasonLines(
  limits: readonly PlanLimit[],
  prefix: (limit: PlanLimit) => string = () => '',
): readonly string[] {
  const told = new Map<
    string,
    { readonly start: string; readonly abouts: Set<string>; readonly end: string }
  >();
  for (const limit of limits) {
    const start = `${prefix(limit)}${limit.because}`;
    const assumed = limit.assumed ? '; not known, so the most sensitive case is assumed' : '';
    const end = `(${limit.rule}; ${sourceWords(limit.source)}${assumed})`;
    const line = told.get(start + end) ?? { start, abouts: new Set(), end };
    if (limit.about !== '') line.abouts.add(limit.about);
    told.set(start + end, line);
  }
  return [...told.values()].map(({ start, abouts, end }) =>
    abouts.size === 0 ? `${start} ${end}` : `${start} — ${[...abouts].join(', ')} ${end}`,
  );
}

/** Axes that say nothing of their own once no liquid may touch the rug. */
const wetAxes: ReadonlySet<Axis> = new Set([
  'finalPh',
  'temperatureC',
  'temperatureStepK',
  'wetMinutes',
  'bathMinutes',
  'strengthGPerL',
]);

const listed: ReadonlySet<Axis> = new Set(axes.filter((axis) => Array.isArray(noLimit[axis])));

/**
 * Every limit that binds, each with its reasons and their sources.
 *
 * @param plan - the plan whose limits are shown
 * @param omit - axes said elsewhere on the same paper
 */
export function limitRows(plan: WashPlan, omit: readonly Axis[] = []): readonly FactRow[] {
  const dry = plan.bounds.bathPh === 'no liquid';
  return axes
    .filter((axis) => !omit.includes(axis) && !(dry && wetAxes.has(axis)) && limits(axis, plan.bounds))
    .map((axis) => {
      const binding = plan.limits.filter((limit) => limit.axis === axis && limit.binding);
      const reasons = listed.has(axis)
        ? reasonLines(binding, (limit) => `${valueWords(axis, limit.value)}: `)
        : reasonLines(binding);
      return {
        name: axisWords[axis],
        value: valueWords(axis, plan.bounds[axis]),
        why: reasons.length === 0 ? 'follows from the other limits' : reasons.join('\n'),
      };
    });
}
