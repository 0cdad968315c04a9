import { leftAfterFills, leftAfterFlow, type RinseBase, type RinseWay, usualRinse } from './dilution.ts';

/** What is left of the bath in the rug once so much water has been used. */
export interface RinsePoint {
  readonly litresPerKg: number;
  readonly left: number;
}

/** So many points draw a smooth flow. */
const flowPoints = 40;

/**
 * The course of one way of rinsing: for fills a point after each, for a flow a curve.
 *
 * @param way - as rinseWays gives it
 * @param base - what the rug holds after draining and extracting, and what a fill takes
 * @source none: dilution by perfect mixing
 */
export function rinseCourse(way: RinseWay, base: RinseBase = usualRinse): readonly RinsePoint[] {
  const { drainedLPerKg, extractedLPerKg, fillLPerKg } = base;
  const begun: RinsePoint = { litresPerKg: 0, left: 1 };
  if (way.fills !== null) {
    const retained = way.extractions > 0 ? extractedLPerKg : drainedLPerKg;
    return [
      begun,
      ...Array.from({ length: way.fills }, (_, i) => ({
        litresPerKg: (i + 1) * fillLPerKg,
        left: leftAfterFills(retained, fillLPerKg, i + 1),
      })),
    ];
  }
  // What extraction took out, the rug takes up again as fresh water before any runs through.
  const taken = way.extractions === 0 ? 0 : drainedLPerKg - extractedLPerKg;
  const start = 1 - taken / drainedLPerKg;
  return [
    begun,
    ...Array.from({ length: flowPoints + 1 }, (_, i) => {
      const through = ((way.litresPerKg - taken) * i) / flowPoints;
      return { litresPerKg: taken + through, left: start * leftAfterFlow(drainedLPerKg, through) };
    }),
  ];
}
