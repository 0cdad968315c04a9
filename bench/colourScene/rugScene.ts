import { blur, cameraOver } from '../loom/camera.ts';
import { between, type Chance, whole } from '../loom/chance.ts';
import type { ShotSpec } from '../loom/rugSpec.ts';
import type { ScenePicture } from './blotScene.ts';
import { type CardSheet, layPieces, outsideInk, printCard, windowInk } from './cardSheet.ts';
import { developed, drawPhone, expose, type Phone, type PhoneBounds } from './phone.ts';
import {
  drawSensor,
  dyed,
  dyes,
  labOfReflectance,
  type Sensor,
  type Spectrum,
  spectrum,
  whiteOf,
} from './spectra.ts';

type Pixel = readonly [x: number, y: number];

/** A colour of the rug: where it is seen in the first picture, and what it truly was and became. */
export interface RugColour {
  readonly name: string;
  readonly area: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  readonly before: ReturnType<typeof labOfReflectance>;
  readonly after: ReturnType<typeof labOfReflectance>;
}

export interface RugScene {
  readonly before: ScenePicture;
  readonly after: ScenePicture;
  readonly beforeCorners: readonly [Pixel, Pixel, Pixel, Pixel];
  readonly afterCorners: readonly [Pixel, Pixel, Pixel, Pixel];
  readonly colours: readonly RugColour[];
}

export interface RugChoice {
  /** Name of a colour whose dye was partly lost. */
  readonly faded?: string;
  /** The second picture shows another rug of the same size. */
  readonly otherRug?: boolean;
  readonly otherCard?: boolean;
  /** A rug of 70 cm, photographed from afar with the card's loose pieces beside its corners. */
  readonly loose?: boolean;
  /** Soil on the rug before, as absorption over scattering. */
  readonly soil: number;
}

interface Size {
  readonly halfWide: number;
  readonly halfHigh: number;
  readonly patch: number;
  readonly pxPerMm: readonly [number, number];
  readonly frame: { readonly widthPx: number; readonly heightPx: number };
  /** Light lost from the middle to 600 mm off [share, at most]. */
  readonly fall: number;
}
const near: Size = {
  ...{ halfWide: 230, halfHigh: 170, patch: 34, pxPerMm: [2.4, 2.6], fall: 0.06 },
  frame: { widthPx: 1360, heightPx: 1070 },
};
const far: Size = {
  ...{ halfWide: 350, halfHigh: 260, patch: 52, pxPerMm: [1, 1.1], fall: 0.2 },
  frame: { widthPx: 1200, heightPx: 880 },
};
const bounds: PhoneBounds = { kelvin: [3500, 6500], tone: [0, 0.6], noise: [0.1, 0.4] };
const soilOf = spectrum((nm) => 0.6 + 0.9 * Math.exp(-(nm - 400) / 120));

const wool = spectrum((nm) => 0.62 * (1 - Math.exp(-(nm - 330) / 90)));
const wools: Readonly<Record<string, Spectrum>> = {
  ivory: wool,
  red: dyed(wool, dyes.red, 5),
  blue: dyed(wool, dyes.blue, 4),
  gold: dyed(wool, dyes.yellow, 3),
  green: dyed(wool, dyes.green, 3),
};
const names = Object.keys(wools);

/** Squares of one colour in a chequer without order, each with a smaller square of another in it. */
interface Design {
  readonly ground: readonly number[];
  readonly motif: readonly number[];
}

const columns = 14;

const drawDesign = (chance: Chance): Design => {
  const of = (): readonly number[] =>
    Array.from({ length: columns * 12 }, () => whole(chance, 0, names.length - 1));
  return { ground: of(), motif: of() };
};

const colourAt = (
  { ground, motif }: Design,
  { halfWide, halfHigh, patch }: Size,
  x: number,
  y: number,
): number => {
  const [u, v] = [(x + halfWide) / patch, (y + halfHigh) / patch];
  const at = Math.floor(v) * columns + Math.floor(u);
  const inner = Math.max(Math.abs(u - Math.floor(u) - 0.5), Math.abs(v - Math.floor(v) - 0.5)) < 0.25;
  return (inner ? motif[at] : ground[at]) ?? 0;
};

function photograph(
  chance: Chance,
  design: Design,
  colours: readonly Spectrum[],
  sheet: CardSheet,
  size: Size,
  phone: Phone,
  shot: ShotSpec,
): ScenePicture {
  const { widthPx: width, heightPx: height } = shot;
  const { toPlane } = cameraOver(shot);
  const paper = sheet.inks[0] ?? wool;
  const of = (surface: Spectrum) => developed(phone, surface, paper);
  const [inks, yarns, floor] = [sheet.inks.map(of), colours.map(of), of(whiteOf(0.3, 0.1))];
  const light = new Float32Array(3 * width * height);
  const fall = shot.lightFall / 600;
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) {
      const [u, v] = toPlane(x + 0.5, y + 0.5);
      const ink = sheet.at(u, v);
      const onRug = Math.abs(u) < size.halfWide && Math.abs(v) < size.halfHigh;
      const isRug = ink === outsideInk || ink === windowInk;
      const surface = isRug
        ? onRug
          ? (yarns[colourAt(design, size, u, v)] ?? floor)
          : floor
        : (inks[ink] ?? floor);
      const texture = isRug && onRug ? between(chance, 0.8, 1.2) : 1;
      for (let band = 0; band < 3; band += 1)
        light[3 * (y * width + x) + band] = (surface[band] ?? 0) * texture * (1 + fall * u);
    }
  blur(light, width, height, shot.blurPx);
  return { widthPx: width, heightPx: height, channels: 3, data: expose(chance, phone, light) };
}

const drawShot = (chance: Chance, { frame, pxPerMm, fall }: Size): ShotSpec => ({
  ...{ ...frame, pxPerMm: between(chance, ...pxPerMm) },
  ...{
    rollDeg: between(chance, -5, 5),
    tiltDeg: between(chance, 0, 8),
    tiltTowardsDeg: between(chance, 0, 360),
  },
  ...{ lightFromDeg: 0, lightHeightDeg: 60, lightFall: between(chance, -fall, fall) },
  ...{ blurPx: between(chance, 0.5, 0.9), sharpen: 0, noise: 0, jpegQuality: 0 },
});

const movedSheet = ({ inks, at }: CardSheet, [x, y]: Pixel): CardSheet => ({
  inks,
  at: (u, v) => at(u - x, v - y),
});

/** The pieces beside the corners of the rug, off them by a hand's chance. */
const beside =
  (chance: Chance, { halfWide, halfHigh }: Size) =>
  (corner: number): Pixel => [
    (corner === 1 || corner === 2 ? 1 : -1) * (halfWide + between(chance, 78, 90)),
    (corner >= 2 ? 1 : -1) * (halfHigh + between(chance, -60, 0)),
  ];

/** Draws a small rug of five colours before and after a wash, photographed twice with the card on it. */
export function drawRugScene(chance: Chance, choice: RugChoice): RugScene {
  const { faded, otherRug = false, otherCard = false, loose = false, soil } = choice;
  const size = loose ? far : near;
  const sensor: Sensor = drawSensor(chance);
  const design = drawDesign(chance);
  const printed = loose
    ? layPieces(chance, 'R7GTEN', beside(chance, size))
    : movedSheet(printCard(chance, 'R7GTEN'), [60, 10]);
  const printedLater = otherCard ? printCard(chance, 'W3LDGR') : printed;
  const laterSheet = loose ? printedLater : movedSheet(printedLater, otherCard ? [70, -20] : [10, -30]);
  const soiled = names.map((name) => dyed(wools[name] ?? wool, soilOf, soil));
  const washed = names.map((name) => (name === faded ? dyed(wool, dyes.orange, 1.2) : (wools[name] ?? wool)));
  const [first, second] = [drawShot(chance, size), drawShot(chance, size)];
  const before = photograph(chance, design, soiled, printed, size, drawPhone(chance, bounds, sensor), first);
  const later = otherRug ? drawDesign(chance) : design;
  const after = photograph(
    chance,
    later,
    washed,
    laterSheet,
    size,
    drawPhone(chance, bounds, sensor),
    second,
  );
  const { toPicture } = cameraOver(first);
  const { halfWide, halfHigh, patch } = size;
  const corners = (shot: ShotSpec): readonly [Pixel, Pixel, Pixel, Pixel] => {
    // A finger is good to a few pixels.
    const tap = (x: number, y: number): Pixel => {
      const [px, py] = cameraOver(shot).toPicture(x, y);
      return [px + between(chance, -6, 6), py + between(chance, -6, 6)];
    };
    return [
      tap(-halfWide, -halfHigh),
      tap(halfWide, -halfHigh),
      tap(halfWide, halfHigh),
      tap(-halfWide, halfHigh),
    ];
  };
  const colours = names.flatMap((name, index): readonly RugColour[] => {
    // The motif of a square left of the card.
    for (let row = 1; row < 9; row += 1)
      for (let column = 0; column < 3; column += 1) {
        if (design.motif[row * columns + column] !== index) continue;
        const [x, y] = toPicture((column + 0.5) * patch - halfWide, (row + 0.5) * patch - halfHigh);
        const side = Math.floor(0.3 * patch * first.pxPerMm);
        return [
          {
            name,
            area: { x: Math.round(x - side / 2), y: Math.round(y - side / 2), width: side, height: side },
            before: labOfReflectance(soiled[index] ?? wool),
            after: labOfReflectance(washed[index] ?? wool),
          },
        ];
      }
    return [];
  });
  return { before, after, beforeCorners: corners(first), afterCorners: corners(second), colours };
}
