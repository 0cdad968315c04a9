import type { RugFactOf } from '../facts/index.ts';
import type { RugProblem } from '../rugProblem.ts';
import type { Asked } from './rule.ts';

/** What a step was mixed from must stand on the shelf, in date on the day it was used. */
export function usedProblem(
  { agent, lot }: NonNullable<RugFactOf<'StepDone'>['used']>[number],
  { shelf, now }: Asked,
): RugProblem | null {
  const product = shelf?.agents.find((one) => one.agent === agent);
  if (product === undefined) return { code: 'agent-not-on-shelf', facts: { agent } };
  const { name, removed, lots } = product;
  if (removed !== null) return { code: 'agent-off-shelf', facts: { agent, name, why: removed.why } };
  const held = lots.find((one) => one.lot === lot);
  if (held === undefined) {
    return { code: 'lot-unknown', facts: { name, lot, known: lots.map((one) => one.lot) } };
  }
  return held.expires !== undefined && held.expires < now.slice(0, 10)
    ? { code: 'lot-expired', facts: { name, lot, expires: held.expires } }
    : null;
}
