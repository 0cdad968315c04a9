import { type Directions, prominenceAt } from './direction.ts';
import { type Likeness, likenessAt } from './likeness.ts';
import type { Spectrum } from './spectrum.ts';

export type Axis = 'weftwise' | 'warpwise';

/** A repeat that may be the one the eye sees along an axis, and what speaks for and against it. */
export interface Candidate {
  readonly axis: Axis;
  /** In picture pixels. */
  readonly pitchPx: number;
  readonly scale: number;
  readonly evidence: Evidence;
}

export const evidenceNames = [
  'once',
  'twice',
  'thrice',
  'half',
  'threeHalves',
  'third',
  'line',
  'doubleLine',
  'halfLine',
  'thirdLine',
  'tripleLine',
  'straight',
  'agreement',
  'levelPitch',
  'fine',
  'coarse',
  'contrast',
  'dip',
  'shadeOnce',
  'shadeTwice',
  'shadeHalf',
  'shadeThreeHalves',
  'shadeLine',
  'shadeDoubleLine',
  'shadeHalfLine',
  'shadeDip',
  'shadeThird',
  'shadeThirdLine',
] as const;
export type Evidence = Readonly<Record<(typeof evidenceNames)[number], number>>;

export interface LevelView {
  readonly scale: number;
  readonly spectrum: Spectrum;
  readonly likeness: Likeness;
  readonly shadeSpectrum: Spectrum;
  readonly shadeLikeness: Likeness;
  readonly directions: Directions;
  readonly contrast: number;
}

/** Repeats a level can judge, in its own pixels. */
const leastPitch = 3.2;
const mostPitch = 26;
const step = 0.2;

/** Likeness against the shift along one axis, at the best shift along the other: rows may be offset. */
function profileOf(
  likeness: Likeness,
  directions: Directions,
  axis: Axis,
): { readonly best: Float32Array; readonly straight: Float32Array } {
  const { columns, rows } = directions;
  // Shifts that leave the rows (columns) in place run along the wefts (warps).
  const alongWeft = [Math.cos(rows), Math.sin(rows)] as const;
  const alongWarp = [-Math.sin(columns), Math.cos(columns)] as const;
  const [main, cross] = axis === 'weftwise' ? [alongWeft, alongWarp] : [alongWarp, alongWeft];
  const count = Math.ceil((Math.min(3 * mostPitch, likeness.size / 2 - 4) + 2) / step);
  const best = new Float32Array(count).fill(-1);
  const straight = new Float32Array(count);
  const reach = Math.min(20, likeness.size / 6);
  for (let index = 0; index < count; index += 1) {
    const along = index * step;
    straight[index] = likenessAt(likeness, along * main[0], along * main[1]);
    for (let side = -reach; side <= reach; side += 1) {
      const value = likenessAt(
        likeness,
        along * main[0] + side * cross[0],
        along * main[1] + side * cross[1],
      );
      if (value > (best[index] ?? 0)) best[index] = value;
    }
  }
  return { best, straight };
}

const peakNear = (profile: Float32Array, pitch: number, tolerance: number): number => {
  let most = -1;
  const from = Math.max(0, Math.floor((pitch * (1 - tolerance)) / step));
  const until = Math.min(profile.length - 1, Math.ceil((pitch * (1 + tolerance)) / step));
  if (from >= profile.length) return 0;
  for (let index = from; index <= until; index += 1) most = Math.max(most, profile[index] ?? 0);
  return most;
};

const valueAt = (profile: Float32Array, pitch: number): number =>
  profile[Math.min(profile.length - 1, Math.round(pitch / step))] ?? 0;

/** Highest prominence on an axis' line near a frequency, within so many turns of the line. */
function lineNear(spectrum: Spectrum, angle: number, axis: Axis, pitch: number): number {
  const { size } = spectrum;
  const radius = size / pitch;
  if (radius > size * 0.48 || radius < 2) return 0;
  let most = 0;
  const spread = Math.max(1, 0.04 * radius);
  for (let r = radius - spread; r <= radius + spread; r += 0.5)
    for (let side = -1.5; side <= 1.5; side += 0.75) {
      const [u, v] =
        axis === 'weftwise'
          ? [r * Math.cos(angle) - side * Math.sin(angle), r * Math.sin(angle) + side * Math.cos(angle)]
          : [-r * Math.sin(angle) + side * Math.cos(angle), r * Math.cos(angle) + side * Math.sin(angle)];
      most = Math.max(most, prominenceAt(spectrum, u, v));
    }
  return most;
}

/** Share of tiles whose own power near the line peaks, within ±22 %, where the mean does. */
function tileAgreement(spectrum: Spectrum, angle: number, axis: Axis, pitch: number): number {
  const { size, tiles } = spectrum;
  let agree = 0;
  for (const tile of tiles) {
    let best = -1;
    let at = 0;
    for (let r = size / pitch / 1.25; r <= (size / pitch) * 1.25; r += 0.5) {
      const [u, v] =
        axis === 'weftwise'
          ? [r * Math.cos(angle), r * Math.sin(angle)]
          : [-r * Math.sin(angle), r * Math.cos(angle)];
      let power = 0;
      for (let side = -1; side <= 1; side += 1) {
        const x = Math.round(axis === 'weftwise' ? u : u + side);
        const y = Math.round(axis === 'weftwise' ? v + side : v);
        power += tile[((y + size) % size) * size + ((x + size) % size)] ?? 0;
      }
      if (power > best) [best, at] = [power, r];
    }
    if (Math.abs(at - size / pitch) <= Math.max(0.9, (0.07 * size) / pitch)) agree += 1;
  }
  return agree / Math.max(1, tiles.length);
}

function judge(
  view: LevelView,
  axis: Axis,
  pitch: number,
  best: Float32Array,
  straight: Float32Array,
  shadeBest: Float32Array,
  shadeStraight: Float32Array,
): Evidence {
  const { spectrum, shadeSpectrum, directions, scale, contrast } = view;
  const angle = axis === 'weftwise' ? directions.columns : directions.rows;
  const once = peakNear(best, pitch, 0.05);
  const near = Math.max(0.02, once);
  const ratio = (value: number): number => Math.max(-1, Math.min(2, value / near));
  const line = (at: number): number => Math.min(6, lineNear(spectrum, angle, axis, at));
  const shadeOnce = peakNear(shadeBest, pitch, 0.05);
  const shadeRatio = (value: number): number => Math.max(-1, Math.min(2, value / Math.max(0.02, shadeOnce)));
  const shadeLine = (at: number): number => Math.min(6, lineNear(shadeSpectrum, angle, axis, at));
  return {
    shadeOnce,
    shadeTwice: shadeRatio(peakNear(shadeBest, 2 * pitch, 0.04)),
    shadeHalf: shadeRatio(valueAt(shadeBest, pitch / 2)),
    shadeThreeHalves: shadeRatio(valueAt(shadeBest, 1.5 * pitch)),
    shadeLine: shadeLine(pitch),
    shadeDoubleLine: shadeLine(pitch / 2),
    shadeHalfLine: shadeLine(2 * pitch),
    shadeDip: shadeRatio(valueAt(shadeStraight, pitch / 2)),
    shadeThird: shadeRatio(Math.max(valueAt(shadeBest, pitch / 3), valueAt(shadeBest, (2 * pitch) / 3))),
    shadeThirdLine: shadeLine(3 * pitch),
    once,
    twice: ratio(peakNear(best, 2 * pitch, 0.04)),
    thrice: ratio(peakNear(best, 3 * pitch, 0.04)),
    half: ratio(valueAt(best, pitch / 2)),
    threeHalves: ratio(valueAt(best, 1.5 * pitch)),
    third: ratio(Math.max(valueAt(best, pitch / 3), valueAt(best, (2 * pitch) / 3))),
    line: line(pitch),
    doubleLine: line(pitch / 2),
    halfLine: line(2 * pitch),
    thirdLine: line(pitch * 3),
    tripleLine: line(pitch / 3),
    straight: ratio(peakNear(straight, pitch, 0.05)),
    dip: ratio(valueAt(straight, pitch / 2)),
    agreement: tileAgreement(spectrum, angle, axis, pitch),
    levelPitch: Math.abs(Math.log(pitch / 8)),
    fine: Math.max(0, Math.log(5 / (pitch * scale))),
    coarse: Math.log((pitch * scale) / 12),
    contrast: Math.log(contrast / 0.06),
  };
}

/** Every repeat one level offers along an axis, with its evidence. */
export function candidatesOf(view: LevelView, axis: Axis): readonly Candidate[] {
  const { spectrum, likeness, directions, scale } = view;
  const { best, straight } = profileOf(likeness, directions, axis);
  const shade = profileOf(view.shadeLikeness, directions, axis);
  const angle = axis === 'weftwise' ? directions.columns : directions.rows;
  const pitches: number[] = [];
  const offer = (pitch: number): void => {
    if (pitch < leastPitch || pitch > mostPitch) return;
    if (pitches.every((known) => Math.abs(Math.log(known / pitch)) > 0.035)) pitches.push(pitch);
  };
  const { size } = spectrum;
  const spectral: { readonly pitch: number; readonly height: number }[] = [];
  let [before, now] = [0, 0];
  for (let r = size / mostPitch; r <= size / leastPitch + 0.5; r += 0.25) {
    const next = lineNear(spectrum, angle, axis, size / r);
    const value =
      axis === 'weftwise'
        ? prominenceAt(spectrum, r * Math.cos(angle), r * Math.sin(angle))
        : prominenceAt(spectrum, -r * Math.sin(angle), r * Math.cos(angle));
    if (now > before && now >= value && now > 1)
      spectral.push({ pitch: size / (r - 0.25), height: Math.max(now, next) });
    [before, now] = [now, value];
  }
  spectral.sort((a, b) => b.height - a.height);
  for (const { pitch } of spectral.slice(0, 6)) offer(pitch);
  for (
    let index = Math.ceil(leastPitch / step);
    index * step <= mostPitch && index + 1 < best.length;
    index += 1
  ) {
    const value = best[index] ?? 0;
    if (value > 0.08 && value > (best[index - 1] ?? 0) && value >= (best[index + 1] ?? 0))
      offer(index * step);
  }
  for (
    let index = Math.ceil(leastPitch / step);
    index * step <= mostPitch && index + 1 < shade.best.length;
    index += 1
  ) {
    const value = shade.best[index] ?? 0;
    if (value > 0.15 && value > (shade.best[index - 1] ?? 0) && value >= (shade.best[index + 1] ?? 0))
      offer(index * step);
  }
  for (const { pitch } of spectral.slice(0, 2)) {
    offer(pitch * 2);
    offer(pitch / 2);
  }
  return pitches.map((pitch) => ({
    axis,
    pitchPx: pitch * scale,
    scale,
    evidence: judge(view, axis, pitch, best, straight, shade.best, shade.straight),
  }));
}
