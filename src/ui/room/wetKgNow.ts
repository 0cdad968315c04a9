import type { DryAnswer } from '../../core/drying/index.ts';
import type { DryingRug } from '../../dossier/index.ts';

/** What a rug weighs now [kg]: by the forecast's course, or by its last weighing; unknown counts as soaked. */
export function wetKgNow(rug: DryingRug, answer: DryAnswer | null, zero: string, now: string): number {
  const hour = (Date.parse(now) - Date.parse(zero)) / 3_600_000;
  const course = answer?.rugs.find(({ id }) => id === rug.rug)?.course;
  const state = course?.findLast((one) => one.hour <= hour) ?? course?.[0];
  if (state !== undefined) return rug.ovenDry.likely * (1 + state.regain);
  const weighed = rug.looks.findLast(({ massKg }) => massKg !== undefined)?.massKg;
  return weighed ?? rug.ovenDry.likely * (1 + soakedRegain);
}

/** Water per dry fibre of a soaked rug; one published weighing, common practice. */
const soakedRegain = 2.4;
