import { conditionWords } from '../../core/condition/index.ts';
import { type Construction, massBandOf } from '../../core/wash/index.ts';
import { sizeOf, soundClaim } from '../planFacts.ts';
import type { RugProblem } from '../rugProblem.ts';
import { presentVisit, type RugStanding } from '../standing.ts';
import type { Rules } from './rule.ts';

/** Three measures of a woven edge differ by a hand's breadth, not by a quarter. */
const mostSpread = 0.25;
/** How far past the measured edge a mark may lie: fringe, skew and a shaky finger. */
const edgeSlackMm = 300;

const pointsNeeded = { point: 1, line: 2, polygon: 3 } as const;

/** Whether a mass is outside what a construction weighs per area; unknown constructions have no band. */
export function massProblem(
  massKg: number,
  areaM2: number,
  construction: Construction | undefined,
): RugProblem | null {
  const band = construction === undefined ? null : massBandOf(construction);
  if (band === null || construction === undefined) return null;
  const [leastKg, mostKg] = [band.least * areaM2, band.most * areaM2];
  return massKg >= leastKg && massKg <= mostKg
    ? null
    : { code: 'mass-outside-band', facts: { massKg, areaM2, construction, leastKg, mostKg } };
}

/** The mass question that is open: both mass and construction are known, they disagree, nobody confirmed. */
export function openMassQuestion(standing: RugStanding): RugProblem | null {
  const weighed = standing.weighings.at(-1);
  const size = sizeOf(standing);
  if (weighed === undefined || weighed.confirmedUnusual === true || size === null) return null;
  return massProblem(weighed.massKg, size.areaM2, soundClaim(standing, 'construction')?.construction);
}

export const intakeRules: Rules = {
  DossierOpened: ({ opened }) =>
    opened === null ? null : { code: 'dossier-open-already', facts: { number: opened.number } },
  RugReceived: (standing) => {
    const visit = presentVisit(standing);
    return visit === null ? null : { code: 'visit-under-way', facts: { tag: visit.received.tag } };
  },
  RugMeasured: (_standing, { lengthsMm, widthsMm, shape }) => {
    if (shape === 'irregular') return null;
    for (const [which, valuesMm] of [
      ['lengths', lengthsMm],
      ['widths', widthsMm],
    ] as const) {
      const most = Math.max(...valuesMm);
      if ((most - Math.min(...valuesMm)) / most > mostSpread) {
        return { code: 'sizes-disagree', facts: { which, valuesMm } };
      }
    }
    return null;
  },
  RugWeighed: (standing, { massKg, confirmedUnusual }) => {
    const size = sizeOf(standing);
    if (size === null || confirmedUnusual === true) return null;
    return massProblem(massKg, size.areaM2, soundClaim(standing, 'construction')?.construction);
  },
  MarkRecorded: (standing, { word, shape, pointsMm, drawn }) => {
    if (!conditionWords.some((known) => known.word === word)) {
      return { code: 'mark-word-unknown', facts: { word } };
    }
    const points = Math.max(pointsMm.length, drawn?.points.length ?? 0);
    const needed = pointsNeeded[shape];
    if (points < needed || (shape === 'point' && points > 1)) {
      return { code: 'mark-points-wrong', facts: { shape, points, needed } };
    }
    const size = sizeOf(standing, 'intake');
    const outside =
      size === null
        ? undefined
        : pointsMm.find(
            ({ xMm, yMm }) =>
              xMm < -edgeSlackMm ||
              yMm < -edgeSlackMm ||
              xMm > size.widthMm + edgeSlackMm ||
              yMm > size.lengthMm + edgeSlackMm,
          );
    if (outside === undefined || size === null) return null;
    const { widthMm, lengthMm } = size;
    return { code: 'mark-outside-rug', facts: { ...outside, widthMm, lengthMm } };
  },
  RugIdentified: (_standing, { claims }) => {
    for (const claim of claims) {
      if (claim.about === 'pile') {
        const sum = Object.values(claim.fibres).reduce((a, b) => a + (b ?? 0), 0);
        if (Math.abs(sum - 1) > 0.005) return { code: 'blend-not-whole', facts: { sum } };
      }
      if (claim.about === 'period') {
        const { fromYear, untilYear } = claim;
        if (fromYear !== undefined && untilYear !== undefined && fromYear > untilYear) {
          return { code: 'years-reversed', facts: { fromYear, untilYear } };
        }
      }
    }
    return null;
  },
};
