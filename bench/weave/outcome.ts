import type { Axis } from '../../src/core/weave/candidate.ts';
import { countWeave, type Taps } from '../../src/core/weave/index.ts';
import { normal, seeded } from '../loom/index.ts';
import { type Shown, type ShownKind, shownPicture } from './shown.ts';

/** How one axis of one picture was counted. */
export interface Outcome {
  readonly seed: number;
  readonly axis: Axis;
  readonly groups: readonly string[];
  readonly accepted: boolean;
  readonly refused: string | null;
  readonly confidence: number;
  /** Share by which the pitch is off the nearest fair truth; the same after taps. */
  readonly off: number | null;
  readonly tappedOff: number | null;
  readonly inside: boolean;
  readonly countMs: number;
}

const offFrom = (fair: readonly number[], pitch: number): number =>
  Math.min(...fair.map((one) => Math.abs(pitch / one - 1)));

/** Two taps on threads or knots seven repeats apart, each a tenth of a repeat off, as by a careful finger. */
function tapsOn({ fair, angleDeg }: Shown, width: number, height: number, seed: number): readonly Taps[] {
  const chance = seeded(seed + 500_000);
  return (['weftwise', 'warpwise'] as const).map((axis) => {
    const pitch = fair[axis][0] ?? 1;
    const angle = (angleDeg[axis] * Math.PI) / 180;
    const [dx, dy] =
      axis === 'weftwise' ? [Math.cos(angle), Math.sin(angle)] : [-Math.sin(angle), Math.cos(angle)];
    const repeats = Math.max(3, Math.min(7, Math.floor((0.7 * Math.min(width, height)) / pitch)));
    const half = (repeats * pitch) / 2;
    const end = (side: number): readonly [number, number] => {
      const reach = side * half + 0.1 * pitch * normal(chance);
      return [width / 2 + reach * dx, height / 2 + reach * dy];
    };
    return { from: end(-1), to: end(1), repeats };
  });
}

/** Counts the picture of a seed, by itself and with one pair of taps to each axis. */
export async function countSeed(
  kind: ShownKind,
  seed: number,
  keep: string | null,
): Promise<readonly Outcome[]> {
  const { picture, shown } = await shownPicture(kind, seed, keep);
  const begun = performance.now();
  const counted = countWeave(picture);
  const countMs = performance.now() - begun;
  const tapped = countWeave(picture, { taps: tapsOn(shown, picture.width, picture.height, seed) });
  return (['weftwise', 'warpwise'] as const).map((axis) => {
    const fair = shown.fair[axis];
    const mine = counted.ok ? counted.value[axis] : null;
    const [low, high] = mine?.pitchInterval95 ?? [0, 0];
    return {
      seed,
      axis,
      groups: shown.groups,
      accepted: mine !== null,
      refused: counted.ok ? null : counted.problem.code,
      confidence: mine?.confidence ?? 0,
      off: mine === null ? null : offFrom(fair, mine.pitchPx),
      tappedOff: tapped.ok ? offFrom([fair[0] ?? 0], tapped.value[axis].pitchPx) : null,
      inside: mine !== null && fair.some((pitch) => pitch >= low && pitch <= high),
      countMs,
    };
  });
}
