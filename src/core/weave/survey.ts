import { type Axis, type Candidate, candidatesOf, type LevelView } from './candidate.ts';
import { type Directions, findDirections } from './direction.ts';
import { type Flattened, flatten } from './flatten.ts';
import { likenessOf } from './likeness.ts';
import { cutLevel, type Picture, type Window } from './picture.ts';
import { spectrumOf } from './spectrum.ts';

/** A window looked at in several sizes, before anything is decided. */
export interface Survey {
  readonly levels: readonly { readonly flat: Flattened; readonly view: LevelView }[];
  readonly directions: Directions;
}

export const scales = [1, 2, 4, 8] as const;
/** Largest angle of the yarns to the picture's axes at which they are looked for [°]. */
export const mostDeg = 18;
/** Longest side that is looked at full size, and that is looked at at all [px]; the middle stands for the rest. */
const fullSize = 1024;
const reach = 2048;

const middleOf = (window: Window, most: number): Window => {
  const width = Math.min(window.width, most);
  const height = Math.min(window.height, most);
  return {
    x: window.x + Math.floor((window.width - width) / 2),
    y: window.y + Math.floor((window.height - height) / 2),
    width,
    height,
  };
};

/**
 * Looks at a window full size, halved, quartered and at an eighth, and finds how the yarns lie.
 *
 * @param mostDeg - largest angle of the yarns to the picture's axes [°]
 * @returns levels that hold at least one tile; none when the window is under 64 px
 * @source none: this project's
 */
export function survey(picture: Picture, window: Window, mostDeg: number): Survey {
  const found = scales.flatMap((scale) => {
    const part = middleOf(window, scale === 1 ? fullSize : reach);
    const side = Math.min(part.width, part.height) / scale;
    const size = side >= 512 ? 256 : side >= 128 ? 128 : side >= 64 && scale === 1 ? 64 : 0;
    if (size === 0) return [];
    const flat = flatten(cutLevel(picture, part, scale));
    const spectrum = spectrumOf(flat.relief, size, 4);
    const shadeSpectrum = spectrumOf(flat.shade, size, 4);
    return [
      {
        flat,
        scale,
        spectrum,
        shadeSpectrum,
        likeness: likenessOf(spectrum),
        shadeLikeness: likenessOf(shadeSpectrum),
        directions: findDirections([spectrum, shadeSpectrum], mostDeg),
        contrast: flat.contrast,
      },
    ];
  });
  const [first, ...rest] = found;
  if (first === undefined) return { levels: [], directions: { columns: 0, rows: 0, strength: 0 } };
  const best = rest.reduce((a, b) => (b.directions.strength > a.directions.strength ? b : a), first);
  return {
    levels: found.map(({ flat, ...view }) => ({ flat, view: { ...view, directions: best.directions } })),
    directions: best.directions,
  };
}

/** Every candidate of an axis, from all sizes. */
export const candidatesAlong = ({ levels }: Survey, axis: Axis): readonly Candidate[] =>
  levels.flatMap(({ view }) => candidatesOf(view, axis));
