import settings from '../../../data/drying/settings.json' with { type: 'json' };
import { refused } from '../../units/index.ts';
import { type Bounded, type Found, firstOf, firstOutside, ofOne } from './fieldProblem.ts';
import type { AirRow, Dehumidifier, DryRoom, DryScenario, Running } from './scenario.ts';

const farHour = 10_000;

function airProblem(field: string, rows: readonly AirRow[], hours: number, coldestC: number): Found {
  const { loggerGapHours: mostHours } = settings;
  return firstOf(rows, ({ hour, airC, rh }, i) => {
    const before = rows[i - 1];
    const outside = firstOutside([
      [`${field}[${i}].hour`, hour, -farHour, farHour, 'h'],
      [`${field}[${i}].airC`, airC, coldestC, 60, '°C'],
      [`${field}[${i}].rh`, rh, 0, 1, ofOne],
    ]);
    if (outside !== null || before === undefined) return outside;
    if (hour <= before.hour) return refused('logger-clock-back', { hour, afterHour: before.hour });
    // A timer's rows may lie far apart; a logger that fell silent has not seen what happened.
    // Weather may be told by a few rows a day.
    const measured = field.startsWith('room.') && (rh !== undefined || before.rh !== undefined);
    return measured && hour - before.hour > mostHours && before.hour < hours && hour > 0
      ? refused('logger-gap', { fromHour: before.hour, toHour: hour, mostHours })
      : null;
  });
}

const runningRows = (field: string, { fromHour, untilHour }: Running): readonly Bounded[] => [
  [`${field}.fromHour`, fromHour, -farHour, farHour, 'h'],
  [`${field}.untilHour`, untilHour, fromHour, farHour, 'h'],
];

const runsProblem = (field: string, runs: readonly Running[] = []): Found =>
  firstOf(runs, (running, i) => firstOutside(runningRows(`${field}.runs[${i}]`, running)));

/** The first thing in a room that cannot be right, or null. */
export function roomProblem(room: DryRoom, hours: number): Found {
  const outside = firstOutside([
    ['hours', hours, 0.1, 1000, 'h'],
    ['room.volumeM3', room.volumeM3, 5, 100_000, 'm³'],
    ['room.airC', room.airC, 0, 60, '°C'],
    ['room.startC', room.startC, 0, 60, '°C'],
    ['room.startRh', room.startRh, 0, 1, ofOne],
    ['room.airSpeed', room.airSpeed, 0, 10, 'm/s'],
    ['room.airChangesPerHour', room.airChangesPerHour, 0, 100, 'per hour'],
    ['room.g', room.g, 0.1, 5, ''],
    ['room.gSpread', room.gSpread, 0.005, 1, ''],
    ['room.wallsWPerK', room.wallsWPerK, 0, 1e6, 'W/K'],
  ]);
  if (outside !== null) return outside;
  const { air, measured = [], openings = [] } = room;
  const isMeasured = measured.length > 0;
  const hasC = air === undefined ? (room.airC ?? room.startC) !== undefined || isMeasured : air.length > 0;
  if (!hasC) return refused('drying-air-missing', { field: 'room.airC' });
  const rows = airProblem('room.air', air ?? [], hours, 0) ?? airProblem('room.measured', measured, hours, 0);
  if (rows !== null) return rows;
  const startsMeasured = isMeasured || (air?.every(({ rh }) => rh !== undefined) ?? false);
  if (!startsMeasured && room.startRh === undefined)
    return refused('drying-air-missing', { field: 'room.startRh' });
  return firstOf(openings, (opening, i) =>
    firstOutside([
      ...runningRows(`room.openings[${i}]`, opening),
      [`room.openings[${i}].airChangesPerHour`, opening.airChangesPerHour, 0, 200, 'per hour'],
    ]),
  );
}

/** The first thing in the outside air that cannot be right, or null. */
export const outsideProblem = ({ airC, rh, series }: DryScenario['outside'], hours: number): Found => {
  if (series !== undefined && series.length === 0)
    return refused('drying-air-missing', { field: 'outside.series' });
  return (
    firstOutside([
      ['outside.airC', airC, -40, 60, '°C'],
      ['outside.rh', rh, 0, 1, ofOne],
    ]) ?? airProblem('outside.series', series ?? [], hours, -40)
  );
};

function dehumidifierProblem(machine: Dehumidifier, index: number): Found {
  for (const missing of ['ratedC', 'ratedRh'] as const) {
    if (machine[missing] === undefined)
      return refused('machine-rating-unstated', { machine: index + 1, missing });
  }
  const field = `dehumidifiers[${index}]`;
  return (
    firstOutside([
      [`${field}.litresPerDay`, machine.litresPerDay, 0, 5000, 'L/day'],
      [`${field}.ratedC`, machine.ratedC, 5, 45, '°C'],
      [`${field}.ratedRh`, machine.ratedRh, 0.1, 1, ofOne],
      [`${field}.kw`, machine.kw, 0, 100, 'kW'],
    ]) ?? runsProblem(field, machine.runs)
  );
}

/** The first thing in dehumidifiers, fans and heaters that cannot be right, or null. */
export const machinesProblem = ({ dehumidifiers, fans = [], heaters = [] }: DryScenario): Found =>
  firstOf(dehumidifiers, dehumidifierProblem) ??
  firstOf(
    fans,
    ({ airSpeed, kw, runs }, i) =>
      firstOutside([
        [`fans[${i}].airSpeed`, airSpeed, 0, 15, 'm/s'],
        [`fans[${i}].kw`, kw, 0, 50, 'kW'],
      ]) ?? runsProblem(`fans[${i}]`, runs),
  ) ??
  firstOf(
    heaters,
    ({ kw, untilC, runs }, i) =>
      firstOutside([
        [`heaters[${i}].kw`, kw, 0, 500, 'kW'],
        [`heaters[${i}].untilC`, untilC, 0, 60, '°C'],
      ]) ?? runsProblem(`heaters[${i}]`, runs),
  );
