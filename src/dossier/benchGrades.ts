import { type Grade, grades } from '../core/wash/index.ts';
import type { RugStanding } from './standing.ts';

/**
 * The grade a white cloth is set beside: what the colour it was pressed on did at worst on the bench, in water
 * or the planned bath. Where nobody says which colour, the one that held best, so that none is passed over;
 * nothing tested counts as the best there is.
 *
 * @param standing - the rug's standing
 * @param colour - id of the colour pressed, if it was said
 * @source none: rule of this project; unknown counts as the worst case
 */
export function benchGrade(standing: RugStanding, colour: string | undefined): Grade {
  const worst = new Map<string, Grade>();
  for (const { colour: tested, liquid, reading } of standing.dyeTests) {
    if ((liquid !== 'planned bath' && liquid !== 'cold water') || reading.kind !== 'graded') continue;
    const known = worst.get(tested);
    if (known === undefined || grades.indexOf(reading.staining) < grades.indexOf(known)) {
      worst.set(tested, reading.staining);
    }
  }
  if (colour !== undefined) return worst.get(colour) ?? '5';
  const ranks = [...worst.values()].map((grade) => grades.indexOf(grade));
  return grades[Math.max(...ranks, -1)] ?? '5';
}
