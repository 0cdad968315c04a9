import references from '../../../data/references.json' with { type: 'json' };
import { type Axis, type AxisValue, type Bounds, noLimit, withinOn } from '../../core/wash/index.ts';
import type { WorkshopSettings } from '../../dossier/index.ts';
import { figure, temperatureWords } from './figures.ts';

/** Axes in the order a washer asks for them, with what each is called. */
export const axisNames: { readonly [A in Axis]: string } = {
  method: 'Method',
  bathPh: 'pH of the bath',
  finalPh: 'pH it is left at',
  temperatureC: 'Water',
  temperatureStepK: 'Step between waters',
  strengthGPerL: 'Concentrate',
  bathMinutes: 'In the bath',
  wetMinutes: 'Wet until extracted',
  totalWetHours: 'Wet until dry',
  agitation: 'Agitation',
  extraction: 'Extraction',
  dryingPosture: 'Drying',
  dryingTemperatureC: 'Drying air',
  people: 'People',
  requiredActs: 'Must be done',
  forbiddenActs: 'Never do',
  forbiddenAgents: 'Never use',
  forbiddenPairs: 'Never together',
  protection: 'Wear',
  consents: 'Tell the client of',
  signOffs: 'Sign-off by',
};

export const axisOrder = Object.keys(axisNames) as readonly Axis[];

const isBand = (value: AxisValue): value is { readonly least: number; readonly most: number } =>
  typeof value === 'object' && 'least' in value;

const bandWords = ({ least, most }: { readonly least: number; readonly most: number }): string => {
  if (least <= 0) return `≤ ${figure(most, 2)}`;
  return most >= 14 ? `≥ ${figure(least, 2)}` : `${figure(least, 2)} – ${figure(most, 2)}`;
};

const atMost: { readonly [A in Axis]?: string } = {
  temperatureC: '°C',
  temperatureStepK: '°C',
  strengthGPerL: 'g/L',
  bathMinutes: 'min',
  wetMinutes: 'min',
  totalWetHours: 'h',
  dryingTemperatureC: '°C',
};

/** A value on an axis as the washer reads it: `≤ 24 °C`, `5 – 7`, `flat`. */
export const valueWords = (
  axis: Axis,
  value: AxisValue,
  units: WorkshopSettings['units'] = 'metric',
): string => {
  if (isBand(value)) return bandWords(value);
  if (value === 0 && (axis === 'wetMinutes' || axis === 'bathMinutes')) return 'not at all';
  if (typeof value === 'number' && (axis === 'temperatureC' || axis === 'dryingTemperatureC'))
    return `≤ ${temperatureWords(value, units)}`;
  if (typeof value === 'number')
    return axis === 'people' ? `at least ${value}` : `≤ ${figure(value)} ${atMost[axis] ?? ''}`;
  if (typeof value === 'string') return value === 'no liquid' ? 'no liquid at all' : value;
  return value.length === 0 ? 'nothing' : value.join(', ');
};

/** The last loosening of a plan finds out everything at once; its fact is called this. */
export const allTogether = 'all of these';

/** What a loosening gives on an axis; empty where it takes nothing away from a list. */
export const looserWords = (axis: Axis, from: AxisValue, to: AxisValue): string => {
  if (!Array.isArray(from) || !Array.isArray(to)) return valueWords(axis, to);
  const gone = from.filter((item) => !to.includes(item));
  return gone.length === 0 ? '' : `no longer ${gone.join(', ')}`;
};

/** Whether anything limits an axis; at the top of its order it means nothing. */
export const isLimited = <A extends Axis>(axis: A, bounds: Bounds): boolean =>
  !withinOn(axis, noLimit[axis], bounds[axis]);

const bibliography: Readonly<
  Record<string, { readonly title: string; readonly kind: string; readonly year?: number } | undefined>
> = references;

/** Where a limit comes from, as it may be shown: only a published work is named as an authority. */
export const sourceWords = (key: string): string => {
  const work = bibliography[key];
  switch (work?.kind) {
    case undefined:
    case 'setting':
      return 'workshop setting';
    case 'practice':
      return 'common practice, no published source';
    case 'memory':
      return 'recalled, not checked against a copy';
    default:
      return work?.title ?? '';
  }
};
