import { useCallback, useSyncExternalStore } from 'react';
import { forgetValue, isKept, keepValue, keptValue, onKept } from './kept.ts';

export type Change<Value> = Value | ((before: Value) => Value);

/**
 * State of a form that outlives a reload, a dead battery or an expired session: kept on this device until
 * `forget` is called, which a page does when the server has acknowledged it.
 *
 * @param key - one per form and subject, e.g. `receive` or `dye-test/<rug>`; a new one when the form's shape
 *   changes, since an older shape may still be kept on somebody's tablet
 * @param initial - what an untouched form holds; give a constant, not a new object each time
 */
export function useKept<Value>(
  key: string,
  initial: Value,
): readonly [Value, (change: Change<Value>) => void, () => void] {
  const read = () => (isKept(key) ? (keptValue(key) as Value) : initial);
  const value = useSyncExternalStore(
    useCallback((listener) => onKept(key, listener), [key]),
    read,
  );
  const set = (change: Change<Value>) =>
    keepValue(key, typeof change === 'function' ? (change as (before: Value) => Value)(read()) : change);
  return [value, set, () => forgetValue(key)];
}
