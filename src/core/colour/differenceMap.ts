import { type LinearRgb, labFromLinear, linearFromByte } from './lab.ts';
import type { ColourPicture } from './measureArea.ts';

/** ΔE00 of every pixel of two pictures that lie on each other; NaN where there is nothing to compare. */
export interface DifferenceMap {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly deltaE: Float32Array;
}

/** A function of one number as a table with straight pieces; one more entry than pieces, so that the end has a neighbour. */
const tableOf = (pieces: number, until: number, of: (value: number) => number): Float64Array =>
  Float64Array.from({ length: pieces + 2 }, (_, at) => of((at * until) / pieces));

const radians = Math.PI / 180;

const linear = Float64Array.from({ length: 256 }, (_, byte) => linearFromByte(byte));

/** The cube root of CIELAB over 0 … 1. */
const rootPieces = 8192;
const root = tableOf(rootPieces, 1.01, (t) =>
  t > (6 / 29) ** 3 ? Math.cbrt(t) : t / (3 * (6 / 29) ** 2) + 4 / 29,
);
const rootStep = rootPieces / 1.01;

/** √(C⁷ / (C⁷ + 25⁷)) over the chroma of sRGB with room for the stretch. */
const chromaPieces = 2048;
const mostChroma = 256;
const towardsGrey = tableOf(chromaPieces, mostChroma, (C) => Math.sqrt(C ** 7 / (C ** 7 + 25 ** 7)));
const chromaStep = chromaPieces / mostChroma;

/** Lightness weight S_L over L* 0 … 100. */
const lightPieces = 1024;
const lightWeight = tableOf(
  lightPieces,
  101,
  (L) => 1 + (0.015 * (L - 50) ** 2) / Math.sqrt(20 + (L - 50) ** 2),
);
const lightStep = lightPieces / 101;

/**
 * Functions of the hue, by a measure of direction that needs no arc tangent: b / (|a| + |b|), turned on by quarters,
 * 0 … 4 for 0 … 360°.
 */
const huePieces = 8192;
const hueOfTurn = (turn: number): number => {
  const quarter = Math.floor(turn) % 4;
  const share = turn - Math.floor(turn);
  return (quarter * 90 + Math.atan2(share, 1 - share) / radians) % 360;
};
const hueWeight = tableOf(huePieces, 4, (turn) => {
  const h = hueOfTurn(turn);
  return (
    1 -
    0.17 * Math.cos(radians * (h - 30)) +
    0.24 * Math.cos(radians * 2 * h) +
    0.32 * Math.cos(radians * (3 * h + 6)) -
    0.2 * Math.cos(radians * (4 * h - 63))
  );
});
const blueTurn = tableOf(
  huePieces,
  4,
  (turn) => -2 * Math.sin(radians * 60 * Math.exp(-(((hueOfTurn(turn) - 275) / 25) ** 2))),
);
const hueStep = huePieces / 4;

/** Rows of linear sRGB to X/Xn, Y/Yn, Z/Zn, found by sending the three primaries through the exact conversion. */
const toWhite = ((): Float64Array => {
  const back = (f: number): number => (f > 6 / 29 ? f ** 3 : 3 * (6 / 29) ** 2 * (f - 4 / 29));
  const of = (light: LinearRgb): readonly number[] => {
    const { L, a, b } = labFromLinear(light);
    const y = (L + 16) / 116;
    return [back(y + a / 500), back(y), back(y - b / 200)];
  };
  const columns = [of([1, 0, 0]), of([0, 1, 0]), of([0, 0, 1])];
  return Float64Array.from({ length: 9 }, (_, at) => columns[at % 3]?.[Math.floor(at / 3)] ?? Number.NaN);
})();

/** Light of each byte times a matrix entry: three sums of three give X, Y and Z. */
const shares = Float64Array.from(
  { length: 9 * 256 },
  (_, at) => (toWhite[at >> 8] ?? Number.NaN) * (linear[at & 255] ?? Number.NaN),
);

const at = (table: Float64Array, place: number): number => {
  const left = place | 0;
  const low = table[left] ?? 0;
  return low + (place - left) * ((table[left + 1] ?? 0) - low);
};

const turnOf = (a: number, b: number): number => {
  const size = Math.abs(a) + Math.abs(b);
  if (size === 0) return 0;
  const share = b / size;
  return a < 0 ? 2 - share : share < 0 ? 4 + share : share;
};

/**
 * Fills rows of a map of ΔE00 between two sRGB pictures; workers share one map by taking rows each.
 *
 * @param before - sRGB picture
 * @param after - sRGB picture of the same size
 * @param into - ΔE00 of the whole picture
 * @param fromRow - first row to fill
 * @param untilRow - the row after the last
 * @source sharma-wu-dalal-2005, equations 2 to 22; iec-61966-2-1 and iso-cie-11664-4 before them
 * @accuracy within 0.02 of the exact formula, checked in differenceMap.test.ts: functions of one number come from
 * tables, the mean hue from the sum of unit vectors, the hue difference from a cross product
 */
export function fillDifference(
  before: ColourPicture,
  after: ColourPicture,
  into: Float32Array,
  fromRow: number,
  untilRow: number,
): void {
  const [one, other] = [before.data, after.data];
  const end = untilRow * before.widthPx;
  for (let pixel = fromRow * before.widthPx; pixel < end; pixel += 1) {
    const from = 3 * pixel;
    const r1 = one[from] ?? 0;
    const g1 = one[from + 1] ?? 0;
    const b1 = one[from + 2] ?? 0;
    const r2 = other[from] ?? 0;
    const g2 = other[from + 1] ?? 0;
    const b2 = other[from + 2] ?? 0;
    if (r1 === r2 && g1 === g2 && b1 === b2) {
      into[pixel] = 0;
      continue;
    }
    const x1 = at(root, rootStep * ((shares[r1] ?? 0) + (shares[256 + g1] ?? 0) + (shares[512 + b1] ?? 0)));
    const y1 = at(
      root,
      rootStep * ((shares[768 + r1] ?? 0) + (shares[1024 + g1] ?? 0) + (shares[1280 + b1] ?? 0)),
    );
    const z1 = at(
      root,
      rootStep * ((shares[1536 + r1] ?? 0) + (shares[1792 + g1] ?? 0) + (shares[2048 + b1] ?? 0)),
    );
    const x2 = at(root, rootStep * ((shares[r2] ?? 0) + (shares[256 + g2] ?? 0) + (shares[512 + b2] ?? 0)));
    const y2 = at(
      root,
      rootStep * ((shares[768 + r2] ?? 0) + (shares[1024 + g2] ?? 0) + (shares[1280 + b2] ?? 0)),
    );
    const z2 = at(
      root,
      rootStep * ((shares[1536 + r2] ?? 0) + (shares[1792 + g2] ?? 0) + (shares[2048 + b2] ?? 0)),
    );
    const labB1 = 200 * (y1 - z1);
    const labB2 = 200 * (y2 - z2);
    const labA1 = 500 * (x1 - y1);
    const labA2 = 500 * (x2 - y2);

    const plain = 0.5 * (Math.sqrt(labA1 * labA1 + labB1 * labB1) + Math.sqrt(labA2 * labA2 + labB2 * labB2));
    const stretch = 1.5 - 0.5 * at(towardsGrey, chromaStep * plain);
    const a1 = labA1 * stretch;
    const a2 = labA2 * stretch;
    const C1 = Math.sqrt(a1 * a1 + labB1 * labB1);
    const C2 = Math.sqrt(a2 * a2 + labB2 * labB2);
    const cross = a1 * labB2 - a2 * labB1;
    const apart = 2 * (C1 * C2 - a1 * a2 - labB1 * labB2);
    const dH = apart <= 0 ? 0 : cross < 0 ? -Math.sqrt(apart) : Math.sqrt(apart);
    const hue = hueStep * turnOf(a1 * C2 + a2 * C1, labB1 * C2 + labB2 * C1);

    const C = 0.5 * (C1 + C2);
    const light = (116 * (y2 - y1)) / at(lightWeight, lightStep * Math.max(0, 58 * (y1 + y2) - 16));
    const chroma = (C2 - C1) / (1 + 0.045 * C);
    const hueDifference = dH / (1 + 0.015 * C * at(hueWeight, hue));
    const rotation = at(blueTurn, hue) * at(towardsGrey, chromaStep * C);
    const square =
      light * light + chroma * chroma + hueDifference * hueDifference + rotation * chroma * hueDifference;
    into[pixel] = square > 0 ? Math.sqrt(square) : 0;
  }
}

/**
 * ΔE00 between two sRGB pictures of one size, pixel by pixel.
 *
 * @param before - sRGB picture
 * @param after - sRGB picture of the same size
 * @returns ΔE00 of every pixel
 * @source sharma-wu-dalal-2005, equations 2 to 22
 * @accuracy within 0.02 of the exact formula, checked in differenceMap.test.ts
 */
export function differenceMap(before: ColourPicture, after: ColourPicture): DifferenceMap {
  const { widthPx, heightPx } = before;
  const deltaE = new Float32Array(widthPx * heightPx);
  fillDifference(before, after, deltaE, 0, heightPx);
  return { widthPx, heightPx, deltaE };
}
