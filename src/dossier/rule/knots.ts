import table from '../../../data/weave/notations.json' with { type: 'json' };
import { knotResult } from '../knotResult.ts';
import { presentVisit } from '../standing.ts';
import type { Rules } from './rule.ts';

/** A counter this sure of itself was right in 98 of 100 pictures; below it a person has to look. */
export const sureEnough = 0.8;

export const knotRules: Rules = {
  KnotsCounted: (standing, fact) => {
    const { least, most } = table.knotsPer7cm;
    for (const { place, weftwisePerM, warpwisePerM } of knotResult(fact).places)
      for (const [axis, { value }] of [
        ['across', weftwisePerM],
        ['along', warpwisePerM],
      ] as const) {
        const knots = 0.07 * value;
        if (!(knots >= least && knots <= most)) {
          const field = `the count ${axis} at ${place}`;
          const facts = { field, value: Number(knots.toPrecision(3)), least, most };
          return { code: 'out-of-range', facts: { ...facts, symbol: 'knots per 7 cm' } };
        }
      }
    if (fact.counted === 'by hand') return null;
    const tag = presentVisit(standing)?.received.tag;
    for (const { place, scale, weftwise, warpwise } of fact.places) {
      if (scale.from === 'card' && scale.tag !== undefined && tag !== undefined) {
        if (scale.tag.toUpperCase() !== tag.toUpperCase())
          return { code: 'card-other-tag', facts: { found: scale.tag, expected: tag } };
      }
      for (const { basis, confidence = 0 } of [weftwise, warpwise])
        if (basis === 'automatic' && confidence < sureEnough)
          return { code: 'count-not-confirmed', facts: { place } };
    }
    return null;
  },
};
