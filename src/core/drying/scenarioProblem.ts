import settings from '../../../data/drying/settings.json' with { type: 'json' };
import { refused } from '../../units/index.ts';
import { equilibriumRegain } from '../air/index.ts';
import { fibresReckoned } from './fibresReckoned.ts';
import { type Bounded, type Found, firstOf, firstOutside, ofOne } from './fieldProblem.ts';
import { machinesProblem, outsideProblem, roomProblem } from './roomProblem.ts';
import { type DryReading, type DryRug, type DryScenario, leastMassKg } from './scenario.ts';

const readingKinds = ['massKg', 'pocketRh', 'meterRegain', 'meterAboveDry', 'touch'] as const;
export type ReadingKind = (typeof readingKinds)[number];

/** The kind of a reading, named as its field. */
export const readingKind = (reading: DryReading): ReadingKind =>
  readingKinds.find((kind) => kind in reading) ?? 'touch';

type ReadingValues = Readonly<Partial<Record<(typeof valueBounds)[number][0], number>>>;
const mostRegain = 5;
const valueBounds = [
  ['massKg', 0.01, 2000, 'kg'],
  ['pocketRh', 0, 1, ofOne],
  ['meterRegain', 0, 5, 'kg/kg'],
  ['points', 1, 100, ''],
  ['meterAboveDry', -1000, 1000, 'points'],
] as const;

function readingProblem(
  { id, dryMassKg, spreads, readings = [], hungAtHour = 0 }: DryRug,
  hours: number,
): Found {
  // No rug holds more water than a scenario may begin with.
  const soakedKg = Math.ceil((dryMassKg ** 2 / leastMassKg({ dryMassKg, spreads })) * (1 + mostRegain));
  return firstOf(readings, (reading, i) => {
    const { hour } = reading;
    const outside = firstOutside([
      [`readings[${i}].hour of rug ${id}`, hour, hungAtHour, hours, 'h'],
      ...valueBounds.map(([kind, least, most, symbol]): Bounded => {
        const value = kind in reading ? (reading as ReadingValues)[kind] : undefined;
        const bound = kind === 'massKg' ? Math.min(most, soakedKg) : most;
        return [`readings[${i}].${kind} of rug ${id}`, value, least, bound, symbol];
      }),
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
    return 'massKg' in reading && reading.massKg < leastMassKg({ dryMassKg, spreads })
      ? refused('mass-below-bone-dry', { rug: id, massKg: reading.massKg, dryMassKg })
      : null;
  });
}

const turningProblem = ({ id, turnings = [], hungAtHour = 0 }: DryRug): Found =>
  firstOf(turnings, ({ hour, faces, posture }, i) => {
    if (faces === undefined && posture === undefined) return refused('turning-unsaid', { rug: id, hour });
    return firstOutside([
      [`turnings[${i}].hour of rug ${id}`, hour, turnings[i - 1]?.hour ?? hungAtHour, 10_000, 'h'],
      [`turnings[${i}].faces of rug ${id}`, faces, 0.1, 2, 'faces'],
    ]);
  });

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
    [`g of rug ${id}`, rug.g, 0.1, 5, ''],
    [`spreads.startRegain of rug ${id}`, rug.spreads?.startRegain, 0.001, 2, ''],
    [`spreads.resistance of rug ${id}`, rug.spreads?.resistance, 0.001, 2, ''],
    [`spreads.criticalRegain of rug ${id}`, rug.spreads?.criticalRegain, 0.001, 2, ''],
    [`spreads.dryMass of rug ${id}`, rug.spreads?.dryMass, 0.001, 2, ''],
    [`hungAtHour of rug ${id}`, rug.hungAtHour, 0, hours, 'h'],
    [`takenAtHour of rug ${id}`, rug.takenAtHour, hung, 10_000, 'h'],
    [`wettedAtHour of rug ${id}`, rug.wettedAtHour, -1000, hung, 'h'],
  ]);
  if (outside !== null) return outside;
  const sum = Object.values(fibres).reduce((total, share) => total + share, 0);
  if (!(Math.abs(sum - 1) <= 0.005) || Object.values(fibres).some((share) => share < 0)) {
    return refused('fibre-shares-off', { rug: id, sum });
  }
  const least = equilibriumRegain(fibresReckoned(rug), settings.targetRh, 'from the wet side').likely;
  if (criticalRegain !== undefined && criticalRegain <= least) {
    return refused('critical-regain-too-low', { rug: id, value: criticalRegain, least });
  }
  return turningProblem(rug) ?? readingProblem(rug, hours);
}

/**
 * The first thing in a scenario that cannot be right, or null.
 *
 * @param scenario - as it came, of the right shape
 * @refuses out-of-range, drying-room-empty, drying-air-missing, rug-named-twice, fibre-shares-off,
 * critical-regain-too-low, machine-rating-unstated, logger-gap, logger-clock-back, readings-out-of-order,
 * reading-doubled, mass-below-bone-dry, turning-unsaid
 * @source workshop-setting, bounds of this project; a logger may be silent as long as data/drying/settings.json says
 */
export function scenarioProblem(scenario: DryScenario): Found {
  const { hours, room, outside, rugs, draws } = scenario;
  if (rugs.length === 0) return refused('drying-room-empty', {});
  const twice = rugs.find(({ id }, i) => rugs.findIndex((other) => other.id === id) !== i);
  if (twice !== undefined) return refused('rug-named-twice', { rug: twice.id });
  return (
    roomProblem(room, hours) ??
    outsideProblem(outside, hours) ??
    firstOutside([['draws', draws, 20, 5000, '']]) ??
    machinesProblem(scenario) ??
    firstOf(rugs, (rug) => rugProblem(rug, hours))
  );
}
