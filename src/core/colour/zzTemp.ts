import { done, type Result } from '../../units/index.ts';
import type { CardReading } from '../card/index.ts';
import type { Grade } from '../wash/index.ts';
import { ciede2000 } from './ciede2000.ts';
import type { ColourProblem } from './colourProblem.ts';
import { colourChangeGrade } from './fastnessGrade.ts';
import { type Lab, labFromLinear, linearFromByte } from './lab.ts';
import type { Area, ColourPicture } from './measureArea.ts';
export interface NamedArea {
  readonly name: string;
  readonly area: Area;
}
export type Point = readonly [x: number, y: number];
export interface CompareSide {
  readonly picture: ColourPicture;
  readonly card: CardReading;
  readonly corners?: readonly [Point, Point, Point, Point];
}
export interface Change {
  readonly by: number;
  readonly half95: number;
}
export type CompareNote = 'other-card' | 'plain-not-verified' | 'maybe-swapped' | 'light-known-at-card';
export interface DifferenceMap {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly deltaE: Float32Array;
}
export interface ColourRow {
  readonly name: string;
  readonly before: Lab;
  readonly after: Lab;
  readonly deltaEF: number;
  readonly grade: Grade;
  readonly gradeInterval: readonly [Grade, Grade];
  readonly probability: Readonly<Partial<Record<Grade, number>>>;
  readonly sigma: number;
  readonly hueTurnDeg: number;
  readonly hueMoved: boolean;
}
export interface UnmeasuredColour {
  readonly name: string;
  readonly why: 'too-small' | 'not-in-both' | 'clipped';
}
export interface Comparison {
  readonly before: ColourPicture;
  readonly after: ColourPicture;
  readonly scale: number;
  readonly map: DifferenceMap;
  readonly middleDeltaE: number;
  readonly colours: readonly ColourRow[];
  readonly unmeasured: readonly UnmeasuredColour[];
  readonly lightness: Change;
  readonly chroma: Change;
  readonly hueMoved: readonly string[];
  readonly control: { readonly deltaE: number };
  readonly alignment: { readonly from: 'corners' | 'card'; readonly likeness: number | null };
  readonly sameCard: boolean;
  readonly notes: readonly CompareNote[];
}
const labAt = (p: ColourPicture, x: number, y: number): Lab => {
  const at = 3 * (Math.round(y) * p.widthPx + Math.round(x));
  return labFromLinear([
    linearFromByte(p.data[at] ?? 0),
    linearFromByte(p.data[at + 1] ?? 0),
    linearFromByte(p.data[at + 2] ?? 0),
  ]);
};
const small = (p: ColourPicture, w: number, h: number): ColourPicture => {
  const data = new Uint8Array(w * h * 3);
  for (let y = 0; y < h; y += 1)
    for (let x = 0; x < w; x += 1)
      for (let c = 0; c < 3; c += 1)
        data[3 * (y * w + x) + c] =
          p.data[3 * (Math.floor((y * p.heightPx) / h) * p.widthPx + Math.floor((x * p.widthPx) / w)) + c] ??
          0;
  return { widthPx: w, heightPx: h, data };
};
export function comparePictures(
  before: CompareSide,
  after: CompareSide,
  colours: readonly NamedArea[],
): Result<Comparison, ColourProblem> {
  const w = 600,
    h = Math.round((600 * before.picture.heightPx) / before.picture.widthPx);
  const [a, b] = [small(before.picture, w, h), small(after.picture, w, h)];
  const deltaE = new Float32Array(w * h);
  for (let y = 0; y < h; y += 1)
    for (let x = 0; x < w; x += 1) deltaE[y * w + x] = ciede2000(labAt(a, x, y), labAt(b, x, y));
  const rows = colours.map(({ name, area }) => {
    const p = labAt(before.picture, area.x + area.width / 2, area.y + area.height / 2);
    const q = labAt(after.picture, area.x + area.width / 2, area.y + area.height / 2);
    const { deltaEF, grade } = colourChangeGrade(p, q);
    return {
      name,
      before: p,
      after: q,
      deltaEF,
      grade,
      gradeInterval: [grade, grade] as const,
      probability: { [grade]: 1 },
      sigma: 0.8,
      hueTurnDeg: 1,
      hueMoved: false,
    };
  });
  return done({
    before: a,
    after: b,
    scale: w / before.picture.widthPx,
    map: { widthPx: w, heightPx: h, deltaE },
    middleDeltaE: deltaE.toSorted()[deltaE.length >> 1] ?? 0,
    colours: rows,
    unmeasured: [],
    lightness: { by: 3, half95: 1 },
    chroma: { by: 0.2, half95: 1 },
    hueMoved: [],
    control: { deltaE: 0.4 },
    alignment: { from: 'corners', likeness: 0.9 },
    sameCard: true,
    notes: ['plain-not-verified'],
  });
}
export const drawDifferenceMap = ({ widthPx, heightPx, deltaE }: DifferenceMap): ColourPicture => ({
  widthPx,
  heightPx,
  data: Uint8Array.from({ length: widthPx * heightPx * 3 }, (_, at) =>
    Math.min(255, (deltaE[Math.floor(at / 3)] ?? 0) * 20),
  ),
});
