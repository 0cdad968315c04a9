import type { Learnt, LearntDrying } from '../core/drying/index.ts';

/** Of the normal distribution, for the bounds of 80 %. */
const spreadsOf80 = 1.2816;

const boundsOf = ({ likely, spread }: Learnt): readonly [number, number] => [
  likely * Math.exp(-spreadsOf80 * spread),
  likely * Math.exp(spreadsOf80 * spread),
];
const fromTo = (learnt: Learnt, digits: number, unit = ''): string => {
  const [least, most] = boundsOf(learnt);
  return `${least.toFixed(digits)} to ${most.toFixed(digits)}${unit}`;
};
const rugs = (runs: number): string => `${runs} past ${runs === 1 ? 'rug' : 'rugs'}`;

/** What a room's forecasts rest on, and how fast it dries against what is reckoned of its air. */
export const factorWords = ({ g }: LearntDrying): string =>
  g.runs === 0
    ? `Rests on no past rug yet: this room is taken to dry ${fromTo(g, 2)} times as fast as reckoned, 80 % likely (first guess).`
    : `Rests on ${rugs(g.runs)}: this room dries the next one ${fromTo(g, 2)} times as fast as reckoned, 80 % likely; most likely ${g.likely.toFixed(2)} times.`;

/** How a rug comes to teach, where none did. */
export const teachesWords = (airEveryHours: number): string =>
  `A rug teaches when it is accepted as dry and was weighed before the water and while it dried, its fibre and extraction are on record, it stayed in this room, and the room’s air was read at least every ${airEveryHours} hours. Weighings taken only once it was dry teach nothing.`;

/** What past rugs of a make taught of its pile. */
export const makeWords = ({ resistance, criticalRegain }: LearntDrying['constructions'][string]): string => {
  const slows = boundsOf(criticalRegain).map((regain) => `${Math.round(regain * 100)}`);
  return `slows down below ${slows.join(' to ')} % water; its dry pile holds back ${fromTo(resistance, 0, ' s/m')}`;
};

/** How many rugs of a make taught it. */
export const makeRunsWords = ({
  resistance,
  criticalRegain,
}: LearntDrying['constructions'][string]): string =>
  `from ${rugs(Math.max(resistance.runs, criticalRegain.runs))}, 80 % likely`;
