import type { HandRequest } from '../contract/index.ts';
import { done, type Result } from '../units/index.ts';
import type { House } from './house.ts';
import { recordEntries } from './recordEntries.ts';
import { provePin } from './signIn.ts';

/**
 * A colleague says by PIN, on the tablet of whoever does the work, that they help with a step. It stands in
 * the record under the colleague's own name; the tablet stays with whoever has it.
 */
export async function lendHand(
  house: House,
  rug: string,
  { id, step, person, pin }: HandRequest,
): Promise<Awaited<ReturnType<typeof recordEntries>> | Result<never, Failed>> {
  const proven = await provePin(house, { person, pin });
  if (!proven.ok) return proven;
  const { name, roles } = proven.value;
  const { length: expectedRevision } = await house.ledger.read(`rug/${rug}`);
  const drafts = [{ id, fact: { type: 'HandLent' as const, step } }];
  const recorded = await recordEntries(house, { person, name, roles, proof: 'pin' }, rug, {
    expectedRevision,
    drafts,
  });
  return recorded.ok ? done(recorded.value) : recorded;
}

type Failed = Extract<Awaited<ReturnType<typeof provePin>>, { readonly ok: false }>['problem'];
