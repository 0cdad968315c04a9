import type { Flattened } from './flatten.ts';
import type { PitchField } from './pitchField.ts';
import { linesOf, type Strips } from './strips.ts';

/** Columns or rows followed along one strip. */
export interface FollowedStrip {
  /** Repeats from end to end, parts of a repeat at the edges included. */
  readonly count: number;
  /** Length of the strip [px of the picture]. */
  readonly lengthPx: number;
  /** Share of the strip in which the repeat was followed without a jump. */
  readonly clear: number;
  /** Place of every repeat in the picture [px]. */
  readonly marks: readonly (readonly [x: number, y: number])[];
}

/** Moving mean three times over: close to a Gaussian window. */
function smooth(values: Float64Array, reach: number): void {
  for (let pass = 0; pass < 3; pass += 1) {
    const before = values.slice();
    let sum = 0;
    for (let index = -reach; index < values.length; index += 1) {
      sum += before[index + reach] ?? 0;
      if (index - reach - 1 >= 0) sum -= before[index - reach - 1] ?? 0;
      if (index >= 0) values[index] = sum / (2 * reach + 1);
    }
  }
}

/** Turns made by the repeat along a strip, following the measured field and what the picture adds to it. */
function turnsAlong(
  line: Float64Array,
  pitchAt: (s: number) => number,
): { readonly turns: Float64Array; readonly clear: number } {
  const count = line.length;
  const carrier = new Float64Array(count);
  const re = new Float64Array(count);
  const im = new Float64Array(count);
  let turn = 0;
  for (let index = 0; index < count; index += 1) {
    carrier[index] = turn;
    re[index] = (line[index] ?? 0) * Math.cos(2 * Math.PI * turn);
    im[index] = -(line[index] ?? 0) * Math.sin(2 * Math.PI * turn);
    turn += 1 / pitchAt(index - count / 2);
  }
  const reach = Math.max(1, Math.round(1.6 * pitchAt(0)));
  smooth(re, reach);
  smooth(im, reach);
  const turns = new Float64Array(count);
  let previous = Math.atan2(im[count >> 1] ?? 0, re[count >> 1] ?? 0);
  const start = previous;
  let clear = 0;
  const mean = re.reduce((sum, value, index) => sum + value * value + (im[index] ?? 0) ** 2, 0) / count;
  const step = (index: number, from: number): number => {
    const angle = Math.atan2(im[index] ?? 0, re[index] ?? 0);
    const unwrapped = angle + 2 * Math.PI * Math.round((from - angle) / (2 * Math.PI));
    const power = (re[index] ?? 0) ** 2 + (im[index] ?? 0) ** 2;
    if (power > 0.08 * mean && Math.abs(unwrapped - from) < 0.6) clear += 1 / count;
    // Where nothing is seen the phase is carried on, not made up.
    return power > 0.02 * mean ? unwrapped : from;
  };
  for (let index = count >> 1; index < count; index += 1) {
    previous = step(index, previous);
    turns[index] = (carrier[index] ?? 0) + previous / (2 * Math.PI);
  }
  previous = start;
  for (let index = (count >> 1) - 1; index >= 0; index -= 1) {
    previous = step(index, previous);
    turns[index] = (carrier[index] ?? 0) + previous / (2 * Math.PI);
  }
  return { turns, clear };
}

/**
 * Follows every column (or row) along the strips, so that the count can be checked by eye.
 *
 * @param flat - the level the field was measured on
 * @param strips - as laid for the field
 * @param field - the measured pitch
 * @returns one entry per strip, places in the picture
 * @source none: complex demodulation (Bingham, Godfrey and Tukey 1967) on a carrier that follows the field
 */
export function follow(flat: Flattened, strips: Strips, field: PitchField): readonly FollowedStrip[] {
  const { scale, left, top, colours } = flat;
  const { main, cross, centre, length } = strips;
  return strips.sides.map((side) => {
    const lines = linesOf(flat, strips, side);
    const whole = lines[colours + 1] ?? new Float64Array(length);
    const { turns, clear } = turnsAlong(
      whole,
      (s) => field.pitch * Math.exp(field.along * s + field.across * side),
    );
    const marks: (readonly [number, number])[] = [];
    for (let index = 1; index < length; index += 1) {
      const before = turns[index - 1] ?? 0;
      const now = turns[index] ?? 0;
      if (Math.floor(now) <= Math.floor(before)) continue;
      const along = index - 1 + (Math.floor(now) - before) / (now - before) - length / 2;
      const x = centre[0] + side * cross[0] + along * main[0];
      const y = centre[1] + side * cross[1] + along * main[1];
      marks.push([left + scale * x, top + scale * y]);
    }
    return {
      count: (turns[length - 1] ?? 0) - (turns[0] ?? 0),
      lengthPx: scale * (length - 1),
      clear,
      marks,
    };
  });
}
