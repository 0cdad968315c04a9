import { useState } from 'react';
import type { WorkshopSettings } from '../../dossier/index.ts';
import { slipMark } from '../kit/goToSlip.ts';
import { NumberKeys } from './NumberKeys.tsx';

/** What a value is worth, said at once. */
export interface ReadingVerdict {
  readonly tone: 'ok' | 'caution' | 'stop';
  readonly words: string;
}

/** One figure of a reading. */
export interface Slot<Key extends string> {
  readonly key: Key;
  readonly name: string;
  readonly unit: string;
  /** In the unit it is typed in. */
  readonly least: number;
  readonly most: number;
  /** From the typed unit to the one on record; absent where they are the same. */
  readonly toKept?: (typed: number) => number;
  /** What is expected, in a few words. */
  readonly aim?: string;
  readonly verdict?: (value: number) => ReadingVerdict | null;
}

export type Typed<Key extends string> = { readonly [K in Key]?: string };

/** Limits and unit of a liquid's or the air's warmth, as the workshop reads it. */
export const warmthIn = (units: WorkshopSettings['units'], leastC: number, mostC: number) =>
  units === 'metric'
    ? { unit: '°C', least: leastC, most: mostC }
    : {
        unit: '°F',
        least: Math.ceil(leastC * 1.8 + 32),
        most: Math.floor(mostC * 1.8 + 32),
        toKept: (fahrenheit: number) => Number(((fahrenheit - 32) / 1.8).toFixed(2)),
      };

/** Limits and unit of a mass, as the workshop reads it. */
export const massIn = (units: WorkshopSettings['units']) =>
  units === 'metric'
    ? { unit: 'kg', least: 0.01, most: 500 }
    : {
        unit: 'lb',
        least: 0.1,
        most: 1100,
        toKept: (pounds: number) => Number((pounds * 0.45359237).toFixed(3)),
      };

/** A typed figure as a number on record; null while it is none or outside what can be. */
export const valueIn = <Key extends string>(slot: Slot<Key>, typed: Typed<Key>): number | null => {
  const text = typed[slot.key] ?? '';
  if (!/^-?\d+([.,]\d*)?$/.test(text)) return null;
  const value = Number(text.replace(',', '.'));
  if (value < slot.least || value > slot.most) return null;
  return slot.toKept?.(value) ?? value;
};

const signs = { ok: '●', caution: '◆', stop: '▲' } as const;

/** Figures chosen by a knuckle and typed on large keys; a keyboard types into the same fields. */
export function ReadingPad<Key extends string>(props: {
  readonly slots: readonly Slot<Key>[];
  readonly typed: Typed<Key>;
  readonly onChange: (typed: Typed<Key>) => void;
}) {
  const { slots, typed, onChange } = props;
  const [at, setAt] = useState(0);
  const slot = slots[at] ?? slots[0];
  if (slot === undefined) return null;
  const change = (key: Key, text: string) => onChange({ ...typed, [key]: text });
  return (
    <div className="reading-pad">
      <ul className="slots">
        {slots.map((one, index) => {
          const text = typed[one.key] ?? '';
          const value = valueIn(one, typed);
          const verdict = value === null ? null : (one.verdict?.(value) ?? null);
          // A sign alone is a figure that is being typed.
          const impossible = text !== '' && text !== '-' && value === null;
          return (
            <li key={one.key} {...slipMark(impossible)} className={index === at ? 'slot chosen' : 'slot'}>
              <label>
                <span className="slot-name">{one.name}</span>
                <span className="slot-value">
                  <input
                    inputMode="none"
                    autoComplete="off"
                    maxLength={9}
                    value={text}
                    aria-invalid={impossible}
                    onFocus={() => setAt(index)}
                    onChange={({ target }) => change(one.key, target.value.trim())}
                  />
                  <span className="unit">{one.unit}</span>
                </span>
                {one.aim !== undefined && <span className="why">{one.aim}</span>}
              </label>
              <span role="status">
                {impossible && (
                  <span className="fault">
                    {one.name} must be {one.least} to {one.most} {one.unit}
                  </span>
                )}
                {verdict !== null && (
                  <span className={`verdict ${verdict.tone}`}>
                    <span aria-hidden="true">{signs[verdict.tone]} </span>
                    {verdict.words}
                  </span>
                )}
              </span>
            </li>
          );
        })}
      </ul>
      <NumberKeys
        label={`Keys for ${slot.name}`}
        text={typed[slot.key] ?? ''}
        onChange={(text) => change(slot.key, text)}
        isSigned={slot.least < 0}
      />
    </div>
  );
}
