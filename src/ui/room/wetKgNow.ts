import type { DryAnswer } from '../../core/drying/index.ts';
import type { DryingRug } from '../../dossier/index.ts';

/**
 * What a rug weighs now [kg]: by the forecast's course, or by its last weighing; unknown counts as soaked. One that
 * nobody weighed dry is what it was weighed last, since it has only grown lighter, else as heavy as its kind may be:
 * people lift it, and a pole carries it.
 */
export function wetKgNow(rug: DryingRug, answer: DryAnswer | null, zero: string, now: string): number {
  const { ovenDry, ovenDryFrom, looks } = rug;
  const hour = (Date.parse(now) - Date.parse(zero)) / 3_600_000;
  const course = answer?.rugs.find(({ id }) => id === rug.rug)?.course;
  const state = course?.findLast((one) => one.hour <= hour) ?? course?.[0];
  const weighed = looks.findLast(({ massKg }) => massKg !== undefined)?.massKg;
  const isGuessed = ovenDryFrom === 'mass band';
  const dryKg = isGuessed ? ovenDry.most : ovenDry.likely;
  if (weighed !== undefined && (isGuessed || state === undefined)) return weighed;
  return dryKg * (1 + (state?.regain ?? soakedRegain));
}

/** Water per dry fibre of a soaked rug; one published weighing, common practice. */
const soakedRegain = 2.4;
