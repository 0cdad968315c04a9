import limits from '../../../data/colour/findBlot.json' with { type: 'json' };
import { done, type Result, refused } from '../../units/index.ts';
import { type CellMask, grown, largestSquare, partsOf, without } from './cellMask.ts';
import type { BlotProblem, BlotUnclear } from './colourProblem.ts';
import { colourDifference } from './fastnessGrade.ts';
import type { Lab } from './lab.ts';
import type { CellSquare, WindowCells } from './windowCells.ts';

/** Where clean cloth and blot lie in the window. */
export interface FoundBlot {
  /** False: nothing in the window differs; its middle stands for the blot. */
  readonly seen: boolean;
  readonly sample: CellSquare;
  readonly controls: readonly CellSquare[];
}

const unclear = (why: BlotUnclear) => refused('blot-not-clear', { why });

const inCells = (mm: number): number => Math.round(mm / limits.cell);

const medianOf = (values: number[]): number => values.sort((p, q) => p - q)[values.length >> 1] ?? Number.NaN;

const middleLab = (labs: readonly Lab[]): Lab => ({
  L: medianOf(labs.map(({ L }) => L)),
  a: medianOf(labs.map(({ a }) => a)),
  b: medianOf(labs.map(({ b }) => b)),
});

/** Median over the neighbours of each cell, axis by axis: threads and specks narrower than half of it vanish. */
function smoothed({ count, labs }: WindowCells): readonly Lab[] {
  const reach = limits.medianReach;
  return labs.map((_, at) => {
    const [column, row] = [at % count, Math.floor(at / count)];
    const near: Lab[] = [];
    for (let y = Math.max(0, row - reach); y <= Math.min(count - 1, row + reach); y += 1)
      for (let x = Math.max(0, column - reach); x <= Math.min(count - 1, column + reach); x += 1) {
        const lab = labs[y * count + x];
        if (lab !== undefined) near.push(lab);
      }
    return middleLab(near);
  });
}

/** Splits values into two heaps so that their own spread is least (Otsu 1979); answers the heaps' means. */
function twoHeaps(values: readonly number[]): { readonly low: number; readonly high: number } {
  const sorted = [...values].sort((p, q) => p - q);
  const sums = [0];
  for (const value of sorted) sums.push((sums.at(-1) ?? 0) + value);
  const total = sums.at(-1) ?? 0;
  let best = { apart: -1, low: 0, high: 0 };
  for (let at = 1; at < sorted.length; at += 1) {
    const below = sums[at] ?? 0;
    const [low, high] = [below / at, (total - below) / (sorted.length - at)];
    const apart = at * (sorted.length - at) * (high - low) ** 2;
    if (apart > best.apart) best = { apart, low, high };
  }
  return best;
}

/** Several clean squares, so that what is left of uneven light shows as their spread. */
function controlsIn(clean: CellMask): readonly CellSquare[] {
  const found: CellSquare[] = [];
  let left = clean;
  while (found.length < limits.controls) {
    const next = largestSquare(left, inCells(limits.mostControlSide));
    const least = Math.max(inCells(limits.leastControlSide), 0.5 * (found[0]?.side ?? 0));
    if (next === null || next.side < least) break;
    found.push(next);
    left = without(left, next);
  }
  return found;
}

/** The middle of the window against its four corners, where nothing differs. */
function unseenBlot(count: number, labs: readonly Lab[]): Result<FoundBlot, BlotProblem> {
  const cloth = middleLab(labs);
  const chroma = Math.hypot(cloth.a, cloth.b);
  if (chroma > limits.unseenMostChroma) return unclear('no-clean-cloth');
  const [sample, control] = [inCells(limits.unseen.sampleSide), inCells(limits.unseen.controlSide)];
  const far = count - control;
  const middle = Math.round((count - sample) / 2);
  return done({
    seen: false,
    sample: { column: middle, row: middle, side: sample },
    controls: [
      { column: 0, row: 0, side: control },
      { column: far, row: 0, side: control },
      { column: 0, row: far, side: control },
      { column: far, row: far, side: control },
    ],
  });
}

/**
 * Finds the blot and clean cloth in the card's window.
 *
 * @param cells - from `windowCells`; the cloth must fill the window
 * @param least - what differs by less is cloth, not blot [ΔE]
 * @returns the largest square of the blot's strong part and up to four squares of clean cloth; where nothing differs
 * by `least`, the middle of the window and its corners
 * @refuses blot-outside-window - the blot runs over the window's edge
 * @refuses blot-not-clear - several blots, hardly any clean cloth, a blot too small or without a level part
 * @source none: rule of this project (data/colour/findBlot.json)
 */
export function findBlot(
  cells: WindowCells,
  least: number = limits.leastDifference,
): Result<FoundBlot, BlotProblem> {
  const { count } = cells;
  const labs = smoothed(cells);
  const byWhiteness = labs.toSorted((p, q) => q.L - Math.hypot(q.a, q.b) - p.L + Math.hypot(p.a, p.b));
  const whitest = middleLab(byWhiteness.slice(0, Math.ceil(labs.length / 5)));
  const offWhitest = labs.map((lab) => colourDifference(whitest, lab));
  const first = twoHeaps(offWhitest);
  const clean = middleLab(labs.filter((_, at) => (offWhitest[at] ?? 0) < (first.low + first.high) / 2));
  const off = labs.map((lab) => colourDifference(clean, lab));
  const { low, high } = twoHeaps(off);
  const edge = (low + high) / 2;
  const noise = medianOf(off.filter((value) => value < edge));
  if (high - low < Math.max(least, limits.noiseTimes * noise)) return unseenBlot(count, labs);

  const stained: CellMask = { count, on: Uint8Array.from(off, (value) => (value >= edge ? 1 : 0)) };
  const parts = partsOf(stained).filter((part) => part.length >= limits.leastBlotArea / limits.cell ** 2);
  const [blot, second] = parts;
  if (blot === undefined) return unseenBlot(count, labs);
  if (second !== undefined && second.length > limits.secondBlotShare * blot.length)
    return unclear('several-blots');
  const isEdge = (at: number): boolean => {
    const [column, row] = [at % count, Math.floor(at / count)];
    return column === 0 || row === 0 || column === count - 1 || row === count - 1;
  };
  if (blot.filter(isEdge).length > limits.edgeShare * 4 * count)
    return refused('blot-outside-window', { name: 'sample' });

  const haloed = grown(stained, inCells(limits.halo));
  const bound = low + limits.cleanShare * (high - low) + noise;
  const isClean = Uint8Array.from(off, (value, at) => (haloed.on[at] === 0 && value <= bound ? 1 : 0));
  if (isClean.reduce((sum, value) => sum + value, 0) < limits.leastCleanShare * off.length)
    return unclear('no-clean-cloth');
  const controls = controlsIn({ count, on: isClean });
  if (controls.length < 2) return unclear('no-clean-cloth');

  const strengths = blot.map((at) => off[at] ?? 0).sort((p, q) => p - q);
  const strong = limits.coreShare * (strengths[Math.floor(0.9 * strengths.length)] ?? 0);
  const core = new Uint8Array(off.length);
  for (const at of blot) if ((off[at] ?? 0) >= strong) core[at] = 1;
  const sample = largestSquare({ count, on: core }, inCells(limits.mostSampleSide));
  if (sample === null || sample.side < inCells(limits.leastSampleSide)) return unclear('blot-too-small');
  return done({ seen: true, sample, controls });
}
