import interval from '../../../data/weave/interval.json' with { type: 'json' };
import type { Axis } from './candidate.ts';
import type { Flattened } from './flatten.ts';
import { type FollowedStrip, follow } from './followed.ts';
import type { Weighed } from './judge.ts';
import { type PitchField, pitchField } from './pitchField.ts';
import { layStrips, type Strips } from './strips.ts';
import type { Survey } from './survey.ts';

/** A repeat measured all over the window. */
export interface MeasuredRepeat {
  readonly axis: Axis;
  /** At the window's centre [px of the picture]. */
  readonly pitchPx: number;
  /** Weight among the axis' candidates before they were measured, 0 … 1. */
  readonly weight: number;
  /** Half of the 95 % interval, as a share of the pitch. */
  readonly halfInterval: number;
  readonly field: PitchField;
  /** What tells how likely it is the one the eye counts; the order is that of the fitted weights. */
  readonly signs: readonly number[];
  readonly follow: () => readonly FollowedStrip[];
}

/** Level pixels per repeat at which strips read best. */
const bestLevelPitch = 10.5;
/** Below this a level shows its own raster instead of the repeat [level px]. */
const leastLevelPitch = 3.2;
/** A part that differs more than this from the whole is another repeat [ln ratio]. */
const mostDifference = 0.1;
/** No field is trusted to be better than this [ln ratio]. */
const leastError = 0.003;

const clamp = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));

const logOdds = (weight: number): number => {
  const share = clamp(weight, 0.002, 0.9995);
  return Math.log(share / (1 - share));
};

interface PartField {
  readonly flat: Flattened;
  readonly strips: Strips;
  readonly field: PitchField;
  /** ln of the whole repeat [px of the picture]. */
  readonly logPitch: number;
  readonly trust: number;
}

/** The field of a repeat, or of its half or third, on the size of the picture that shows that best. */
function partField(
  { levels, directions }: Survey,
  axis: Axis,
  pitchPx: number,
  otherPx: number,
  part: number,
): PartField | null {
  const distance = (scale: number): number => Math.abs(Math.log(pitchPx / part / scale / bestLevelPitch));
  const suited = [...levels].sort((a, b) => distance(a.flat.scale) - distance(b.flat.scale));
  for (const { flat } of suited.slice(0, 2)) {
    const pitch = pitchPx / part / flat.scale;
    if (pitch < leastLevelPitch) continue;
    const strips = layStrips(flat, directions, axis, pitch, otherPx / flat.scale);
    const field = strips === null ? null : pitchField(flat, strips, pitch);
    if (strips === null || field === null) continue;
    return {
      flat,
      strips,
      field,
      logPitch: Math.log(field.pitch * flat.scale * part),
      trust: (field.within ** 2 * Math.max(0.1, field.height)) / (field.error ** 2 + leastError ** 2),
    };
  }
  return null;
}

/** Mean of what a repeat and its parts say, the steadier counting more; how far they differ, and what each alone leaves open. */
function agree(fields: readonly PartField[]): {
  readonly logPitch: number;
  readonly spread: number;
  readonly error: number;
} {
  const sum = (of: (one: PartField) => number): number => fields.reduce((total, one) => total + of(one), 0);
  const whole = Math.max(
    1e-9,
    sum(({ trust }) => trust),
  );
  const logPitch = sum((one) => one.trust * one.logPitch) / whole;
  return {
    logPitch,
    spread: Math.sqrt(sum((one) => one.trust * (one.logPitch - logPitch) ** 2) / whole),
    error: Math.sqrt(sum((one) => one.trust * one.field.error ** 2) / whole),
  };
}

/**
 * Measures one candidate: its pitch at the centre, its interval, and the signs for and against it.
 *
 * A repeat of coarse knots is blunt at its own size, but its half and its third are drawn sharply by the
 * edges of the nodes; all three are measured, and what the steadier ones say counts more.
 *
 * @param otherPx - the likeliest repeat of the other axis [px of the picture]
 * @returns null where the window does not hold four repeats
 * @source none: this project's; interval set on rendered pictures (data/weave/interval.json)
 */
export function measureRepeat(
  seen: Survey,
  axis: Axis,
  candidate: Weighed,
  otherPx: number,
): MeasuredRepeat | null {
  const first = partField(seen, axis, candidate.pitchPx, otherPx, 1);
  if (first === null) return null;
  const parts = [2, 3].flatMap((part) => {
    const found = partField(seen, axis, Math.exp(first.logPitch), otherPx, part);
    return found === null || Math.abs(found.logPitch - first.logPitch) > mostDifference ? [] : [found];
  });
  const { flat, strips, field } = first;
  const { logPitch, spread, error } = agree([first, ...parts]);
  const pitchPx = Math.exp(logPitch);
  const repeats = strips.length / field.pitch;
  const measured = { ...field, pitch: pitchPx / flat.scale };
  return {
    axis,
    pitchPx,
    weight: candidate.weight,
    halfInterval: Math.hypot(
      interval.floor,
      interval.stretch * error,
      interval.spread * spread,
      interval.uneven / repeats,
    ),
    field: measured,
    signs: [
      logOdds(candidate.weight),
      field.within,
      Math.min(1.5, field.height),
      Math.min(0, Math.log(pitchPx / 6)),
      Math.max(0, Math.log(pitchPx / 20)),
      clamp(Math.log(flat.contrast / 0.05), -2, 0),
      Math.log(Math.max(0.002, spread)),
      Math.log(Math.max(0.001, error)),
      ...field.overtones.map((part) => clamp(part, -6, 3)),
      ...field.standOut.map((part) => Math.min(5, part)),
      parts.length,
      axis === 'weftwise' ? 1 : 0,
      Math.min(3, repeats / 20),
    ],
    follow: () => follow(flat, strips, measured),
  };
}
