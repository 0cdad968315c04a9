import { type PlanStep, phBandOf } from '../../core/wash/index.ts';
import { agreedPlan, latestVisit, type RugStanding, stepId } from '../../dossier/index.ts';
import type { Moment, Told } from './moment.ts';
import { acts } from './telling.ts';

/** The step under way, with its plan. */
const underWay = (standing: RugStanding) => {
  const running = latestVisit(standing)?.steps.find(({ started, done }) => started !== null && done === null);
  const plan = agreedPlan(standing);
  const step = plan?.steps.find((one) => stepId(one) === running?.step);
  return plan === null || step === undefined ? null : { step, plan };
};

/** Water is as warm as its step asks, else as the cold supply. */
const warmthOf = ({ temperatureC }: PlanStep): number =>
  temperatureC === undefined ? 18 : Math.round((temperatureC.least + temperatureC.most) / 2);

const supplyUsPerCm = 640;
const supplyPh = 7.2;

/** How the rinse water came to the supply: each reading lower than the one before, the last two at it. */
const rinseReadings = [
  { conductivityUsPerCm: 890, ph: 7.1, foam: 'some' },
  { conductivityUsPerCm: 664, ph: 7.2, foam: 'none' },
  { conductivityUsPerCm: 648, ph: 7.2, foam: 'none' },
] as const;

/** Detergent is laid in two steps, and each is rinsed out and read by itself. */
const rinsed =
  (at: number): Told =>
  ({ standing }) => {
    const now = underWay(standing);
    const read = rinseReadings[at];
    if (now === null || read === undefined || !['rinse', 'second wash'].includes(now.step.kind)) return null;
    return {
      ...{ type: 'RinseMeasured', step: stepId(now.step), ...read },
      ...{ supplyConductivityUsPerCm: supplyUsPerCm, supplyPh, temperatureC: warmthOf(now.step) },
      ...{ whiteClothGrade: '5', runOff: at === 0 ? 'soil' : 'clear' },
    };
  };

/** The final acid rinse stays in the rug, so its own pH is read, in the middle of its band. */
const acidRead: Told = ({ standing }) => {
  const now = underWay(standing);
  const band = now?.step.kind === 'acid rinse' ? phBandOf(now.step, now.plan) : null;
  if (now === null || band === null) return null;
  const ph = Math.round(5 * (band.least + band.most)) / 10;
  return { type: 'BathMeasured', step: stepId(now.step), ph, temperatureC: warmthOf(now.step), photos: [] };
};

/** Every step of the agreed plan to the end of the wash, its rinses read to their end point. */
export const washedThrough: Moment['facts'] = acts(40).flatMap((act) => [
  act,
  ...rinseReadings.map((_, at) => rinsed(at)),
  acidRead,
]);
