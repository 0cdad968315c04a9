import settings from '../../../data/drying/settings.json' with { type: 'json' };
import { refused } from '../../units/index.ts';
import { equilibriumRegain } from '../air/index.ts';
import type { DryingProblem } from './dryingProblem.ts';
import type { AirRow, Dehumidifier, DryReading, DryRoom, DryRug, DryScenario } from './scenario.ts';

type Found = { readonly ok: false; readonly problem: DryingProblem } | null;

/** Field, value, least, most and unit of a number that has to lie between. */
type Bounded = readonly [
  field: string,
  value: number | undefined,
  least: number,
  most: number,
  symbol: string,
];

const ofOne = 'as a fraction of 1';

function firstOutside(rows: readonly Bounded[]): Found {
  const wrong = rows.find(
    ([, value, least, most]) => value !== undefined && !(value >= least && value <= most),
  );
  if (wrong === undefined) return null;
  const [field, value, least, most, symbol] = wrong;
  return refused('out-of-range', { field, value: value ?? Number.NaN, least, most, symbol });
}

const firstOf = <Of>(list: readonly Of[], check: (one: Of, index: number) => Found): Found => {
  for (const [index, one] of list.entries()) {
    const found = check(one, index);
    if (found !== null) return found;
  }
  return null;
};

/** The kind of a reading, named as its field. */
export const readingKind = (reading: DryReading): 'massKg' | 'pocketRh' | 'meterRegain' | 'touch' =>
  'massKg' in reading
    ? 'massKg'
    : 'pocketRh' in reading
      ? 'pocketRh'
      : 'meterRegain' in reading
        ? 'meterRegain'
        : 'touch';

function airProblem(rows: readonly AirRow[], hours: number): Found {
  const { loggerGapHours: mostHours } = settings;
  if (rows.length === 0) return refused('drying-air-missing', { field: 'room.airC' });
  return firstOf(rows, ({ hour, airC, rh }, i) => {
    const before = rows[i - 1];
    const outside = firstOutside([
      [`room.air[${i}].hour`, hour, -10_000, 10_000, 'h'],
      [`room.air[${i}].airC`, airC, 0, 60, '°C'],
      [`room.air[${i}].rh`, rh, 0, 1, ofOne],
    ]);
    if (outside !== null || before === undefined) return outside;
    if (hour <= before.hour) return refused('logger-clock-back', { hour, afterHour: before.hour });
    // A timer's rows may lie far apart; a logger that fell silent has not seen what happened.
    const measured = rh !== undefined || before.rh !== undefined;
    return measured && hour - before.hour > mostHours && before.hour < hours
      ? refused('logger-gap', { fromHour: before.hour, toHour: hour, mostHours })
      : null;
  });
}

function roomProblem(room: DryRoom, hours: number): Found {
  const outside = firstOutside([
    ['hours', hours, 0.1, 1000, 'h'],
    ['room.volumeM3', room.volumeM3, 5, 100_000, 'm³'],
    ['room.airC', room.airC, 0, 60, '°C'],
    ['room.startRh', room.startRh, 0, 1, ofOne],
    ['room.airSpeed', room.airSpeed, 0, 10, 'm/s'],
    ['room.airChangesPerHour', room.airChangesPerHour, 0, 100, 'per hour'],
    ['room.g', room.g, 0.1, 5, ''],
  ]);
  if (outside !== null) return outside;
  if (room.air === undefined && room.airC === undefined)
    return refused('drying-air-missing', { field: 'room.airC' });
  const rows = room.air === undefined ? null : airProblem(room.air, hours);
  if (rows !== null) return rows;
  const measured = room.air?.every(({ rh }) => rh !== undefined) ?? false;
  return !measured && room.startRh === undefined
    ? refused('drying-air-missing', { field: 'room.startRh' })
    : null;
}

function machineProblem(machine: Dehumidifier, index: number): Found {
  for (const missing of ['ratedC', 'ratedRh'] as const) {
    if (machine[missing] === undefined)
      return refused('machine-rating-unstated', { machine: index + 1, missing });
  }
  return firstOutside([
    [`dehumidifiers[${index}].litresPerDay`, machine.litresPerDay, 0, 5000, 'L/day'],
    [`dehumidifiers[${index}].ratedC`, machine.ratedC, 5, 45, '°C'],
    [`dehumidifiers[${index}].ratedRh`, machine.ratedRh, 0.1, 1, ofOne],
  ]);
}

function readingProblem({ id, dryMassKg, readings = [], hungAtHour = 0 }: DryRug, hours: number): Found {
  return firstOf(readings, (reading, i) => {
    const { hour } = reading;
    const outside = firstOutside([
      [`readings[${i}].hour of rug ${id}`, hour, hungAtHour, hours, 'h'],
      [
        `readings[${i}].massKg of rug ${id}`,
        'massKg' in reading ? reading.massKg : undefined,
        0.01,
        2000,
        'kg',
      ],
      [
        `readings[${i}].pocketRh of rug ${id}`,
        'pocketRh' in reading ? reading.pocketRh : undefined,
        0,
        1,
        ofOne,
      ],
      [
        `readings[${i}].meterRegain of rug ${id}`,
        'meterRegain' in reading ? reading.meterRegain : undefined,
        0,
        5,
        'kg/kg',
      ],
    ]);
    if (outside !== null) return outside;
    const before = readings[i - 1];
    if (before !== undefined && hour < before.hour) {
      return refused('readings-out-of-order', { rug: id, hour, afterHour: before.hour });
    }
    const kind = readingKind(reading);
    if (readings.slice(0, i).some((one) => one.hour === hour && readingKind(one) === kind)) {
      return refused('reading-doubled', { rug: id, hour, kind });
    }
    return 'massKg' in reading && reading.massKg < dryMassKg
      ? refused('mass-below-bone-dry', { rug: id, massKg: reading.massKg, dryMassKg })
      : null;
  });
}

function rugProblem(rug: DryRug, hours: number): Found {
  const { id, fibres, criticalRegain } = rug;
  const hung = rug.hungAtHour ?? 0;
  const outside = firstOutside([
    [`areaM2 of rug ${id}`, rug.areaM2, 0.01, 500, 'm²'],
    [`dryMassKg of rug ${id}`, rug.dryMassKg, 0.01, 2000, 'kg'],
    [`dryMassKg per m² of rug ${id}`, rug.dryMassKg / rug.areaM2, 0.1, 50, 'kg/m²'],
    [`startRegain of rug ${id}`, rug.startRegain, 0, 5, 'kg/kg'],
    [`faces of rug ${id}`, rug.faces, 0.1, 2, 'faces'],
    [`targetRegain of rug ${id}`, rug.targetRegain, 0, 5, 'kg/kg'],
    [`criticalRegain of rug ${id}`, criticalRegain, 0, 5, 'kg/kg'],
    [`resistance of rug ${id}`, rug.resistance, 0, 5000, 's/m'],
    [`hungAtHour of rug ${id}`, rug.hungAtHour, 0, hours, 'h'],
    [`takenAtHour of rug ${id}`, rug.takenAtHour, hung, 10_000, 'h'],
    [`wettedAtHour of rug ${id}`, rug.wettedAtHour, -1000, hung, 'h'],
  ]);
  if (outside !== null) return outside;
  const sum = Object.values(fibres).reduce((total, share) => total + share, 0);
  if (!(Math.abs(sum - 1) <= 0.005) || Object.values(fibres).some((share) => share < 0)) {
    return refused('fibre-shares-off', { rug: id, sum });
  }
  const least = equilibriumRegain(fibres, settings.targetRh, 'from the wet side').likely;
  if (criticalRegain !== undefined && criticalRegain <= least) {
    return refused('critical-regain-too-low', { rug: id, value: criticalRegain, least });
  }
  return readingProblem(rug, hours);
}

/**
 * The first thing in a scenario that cannot be right, or null.
 *
 * @param scenario - as it came, of the right shape
 * @refuses out-of-range, drying-room-empty, drying-air-missing, rug-named-twice, fibre-shares-off,
 * critical-regain-too-low, machine-rating-unstated, logger-gap, logger-clock-back, readings-out-of-order,
 * reading-doubled, mass-below-bone-dry
 * @source workshop-setting, bounds of this project; a logger may be silent as long as data/drying/settings.json says
 */
export function scenarioProblem({ hours, room, outside, dehumidifiers, rugs, draws }: DryScenario): Found {
  if (rugs.length === 0) return refused('drying-room-empty', {});
  const twice = rugs.find(({ id }, i) => rugs.findIndex((other) => other.id === id) !== i);
  if (twice !== undefined) return refused('rug-named-twice', { rug: twice.id });
  return (
    roomProblem(room, hours) ??
    firstOutside([
      ['outside.airC', outside.airC, -40, 60, '°C'],
      ['outside.rh', outside.rh, 0, 1, ofOne],
      ['draws', draws, 20, 5000, ''],
    ]) ??
    firstOf(dehumidifiers, machineProblem) ??
    firstOf(rugs, (rug) => rugProblem(rug, hours))
  );
}
