import type { House } from './house.ts';

const last = new WeakMap<House['ledger'], Promise<unknown>>();

/**
 * Does things of one house in turn. Numbers and tags are unique across rugs, which the revisions of single
 * streams do not guard; one server holds the store, so its own order is enough.
 */
export function oneAtATime<Value>({ ledger }: House, doing: () => Promise<Value>): Promise<Value> {
  const before = last.get(ledger) ?? Promise.resolve();
  const mine = before.then(doing, doing);
  last.set(ledger, mine);
  return mine;
}
