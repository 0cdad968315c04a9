import confidence from '../../../data/weave/confidence.json' with { type: 'json' };
import type { Axis } from './candidate.ts';
import { type FollowedStrip, follow } from './followed.ts';
import type { Weighed } from './judge.ts';
import { layStrips, type PitchField, pitchField } from './pitchField.ts';
import type { Survey } from './survey.ts';

/** A repeat measured all over the window. */
export interface MeasuredRepeat {
  readonly axis: Axis;
  /** At the window's centre [px of the picture]. */
  readonly pitchPx: number;
  /** Weight among the axis' candidates, 0 … 1. */
  readonly weight: number;
  /** How sure the factor and the place are together, 0 … 1, calibrated on loom pictures. */
  readonly confidence: number;
  /** Half of the 95 % interval, as a share of the pitch. */
  readonly halfInterval: number;
  readonly field: PitchField;
  readonly follow: () => readonly FollowedStrip[];
}

/** Level pixels per repeat at which strips read best. */
const bestLevelPitch = 10.5;

/** What the confidence is made from; the order is that of the fitted weights. */
const signsOf = (weight: number, field: PitchField, pitchPx: number, contrast: number): readonly number[] => {
  const share = Math.min(0.9995, Math.max(0.02, weight));
  return [
    1,
    Math.log(share / (1 - share)),
    field.within,
    Math.min(1, field.height),
    Math.min(0, Math.log(pitchPx / 6)),
    Math.max(-2, Math.min(0, Math.log(contrast / 0.05))),
  ];
};

/**
 * Measures one candidate: its pitch at the centre, its interval, how sure it is.
 *
 * @param otherPx - the likeliest repeat of the other axis [px of the picture]
 * @returns null where the window does not hold four repeats
 * @source none: this project's; weights fitted to loom pictures (data/weave/confidence.json)
 */
export function measureRepeat(
  { levels, directions }: Survey,
  axis: Axis,
  candidate: Weighed,
  otherPx: number,
): MeasuredRepeat | null {
  const suited = [...levels].sort(
    (a, b) =>
      Math.abs(Math.log(candidate.pitchPx / a.flat.scale / bestLevelPitch)) -
      Math.abs(Math.log(candidate.pitchPx / b.flat.scale / bestLevelPitch)),
  );
  for (const { flat } of suited.slice(0, 2)) {
    const pitch = candidate.pitchPx / flat.scale;
    const strips = layStrips(flat, directions, axis, pitch, otherPx / flat.scale);
    const field = strips === null ? null : pitchField(flat, strips, pitch);
    if (strips === null || field === null) continue;
    const pitchPx = field.pitch * flat.scale;
    const signs = signsOf(candidate.weight, field, pitchPx, flat.contrast);
    const score = signs.reduce((sum, sign, index) => sum + sign * (confidence.weights[index] ?? 0), 0);
    return {
      axis,
      pitchPx,
      weight: candidate.weight,
      confidence: 1 / (1 + Math.exp(-score)),
      halfInterval: Math.hypot(confidence.floor, confidence.stretch * field.error),
      field,
      follow: () => follow(flat, strips, field),
    };
  }
  return null;
}
