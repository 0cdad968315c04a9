import { blur, cameraOver } from '../loom/camera.ts';
import { between, betweenLog, type Chance, oneOf, wandering, whole } from '../loom/chance.ts';
import type { ShotSpec } from '../loom/rugSpec.ts';
import { type CardSheet, outsideInk, printCard, windowInk } from './cardSheet.ts';
import { developed, drawPhone, expose, type Phone, type PhoneBounds } from './phone.ts';
import {
  type DyeName,
  drawSensor,
  dyed,
  dyes,
  labOfReflectance,
  type Sensor,
  type Spectrum,
  whiteOf,
} from './spectra.ts';

export interface ScenePicture {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly channels: 3;
  readonly data: Uint8Array;
}

type SceneLab = ReturnType<typeof labOfReflectance>;

/** A white cloth before and after a test, photographed twice under one card. */
export interface BlotScene {
  readonly before: ScenePicture;
  readonly after: ScenePicture;
  readonly jpegQuality: number;
  /** Colours of clean cloth and of the blot's level part under daylight. */
  readonly clean: SceneLab;
  readonly stained: SceneLab;
  readonly dye: DyeName;
}

/** The limits within which the reader promises to answer. */
export interface SceneBounds extends PhoneBounds {
  readonly tiltDeg: number;
  /** Light lost across the card [share]. */
  readonly fall: number;
  readonly longerPx: readonly [number, number];
  /** Dye taken up, as absorption over scattering at the dye's peak; 0 is none. */
  readonly amount: readonly [number, number];
}

export const statedBounds: SceneBounds = {
  kelvin: [2700, 7000],
  tone: [0, 0.7],
  noise: [0.1, 0.6],
  tiltDeg: 25,
  fall: 0.3,
  longerPx: [800, 1300],
  amount: [0.004, 1.2],
};

interface Cloth {
  readonly clean: Spectrum;
  readonly steps: readonly Spectrum[];
  /** Share of the blot's dye at a point of the window [mm]; 0 on clean cloth. */
  readonly dyeAt: (x: number, y: number) => number;
  readonly threads: readonly (readonly [x: number, y: number, angle: number, length: number])[];
}

const steps = 48;

/** A blot with a level middle and a soft edge, wholly inside the window. */
function drawBlot(chance: Chance): (x: number, y: number) => number {
  const [wide, high] = [between(chance, 7, 23), between(chance, 7, 23)];
  const [x0, y0] = [wide, high].map((half) => between(chance, -1, 1) * Math.max(0, 27 - half)) as [
    number,
    number,
  ];
  const corners = between(chance, 2, 5);
  const soft = between(chance, 1, 4);
  const wave = wandering(chance, 9);
  const uneven = between(chance, 0, 0.08);
  return (x, y) => {
    const [u, v] = [(x - x0) / wide, (y - y0) / high];
    const ring = (Math.abs(u) ** corners + Math.abs(v) ** corners) ** (1 / corners);
    const angle = Math.atan2(v, u) / Math.PI + 1;
    const inside = ((1 + 0.06 * wave(4.5 * angle) - ring) * Math.min(wide, high)) / soft;
    const share = Math.min(1, Math.max(0, inside));
    return share * share * (3 - 2 * share) * (1 + uneven * wave(4 + 2 * u) * wave(5 + 2 * v));
  };
}

function drawShot(chance: Chance, bounds: SceneBounds): ShotSpec {
  const longer = whole(chance, ...bounds.longerPx);
  return {
    widthPx: longer,
    heightPx: Math.round(longer * 0.86),
    pxPerMm: (longer / 165) * between(chance, 0.78, 0.98),
    rollDeg: between(chance, -180, 180),
    tiltDeg: between(chance, 0, bounds.tiltDeg),
    tiltTowardsDeg: between(chance, 0, 360),
    lightFromDeg: between(chance, 0, 360),
    lightHeightDeg: 60,
    lightFall: between(chance, 0, bounds.fall),
    blurPx: between(chance, 0.5, 1.4),
    sharpen: chance() < 0.5 ? 0 : between(chance, 0.1, 0.5),
    noise: 0,
    jpegQuality: 0,
  };
}

/** Photographs the card on the cloth; `stained` says whether the test has been made. */
function photograph(
  chance: Chance,
  sheet: CardSheet,
  cloth: Cloth,
  shot: ShotSpec,
  phone: Phone,
  stained: boolean,
): ScenePicture {
  const { widthPx: width, heightPx: height } = shot;
  const { toPlane } = cameraOver(shot);
  const paper = sheet.inks[0] ?? cloth.clean;
  const colour = (of: Spectrum): readonly [number, number, number] => developed(phone, of, paper);
  const inks = sheet.inks.map(colour);
  const dyedSteps = cloth.steps.map(colour);
  const [rug, thread] = [colour(whiteOf(0.16, 0.5)), colour(whiteOf(0.05, 0.2))];
  const from = (shot.lightFromDeg * Math.PI) / 180;
  const [fallX, fallY] = [Math.cos(from) * shot.lightFall, Math.sin(from) * shot.lightFall];
  // Two windows never have quite one colour, and a lens darkens its corners.
  const [warmX, vignette] = [between(chance, -0.03, 0.03), between(chance, 0, 0.12)];
  const weave = new Float32Array(256 * 256).map(() => between(chance, -1, 1));
  const light = new Float32Array(width * height * 3);
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1)
      for (const [dx, dy] of [
        [0.25, 0.25],
        [0.75, 0.75],
      ] as const) {
        const [u, v] = toPlane(x + dx, y + dy);
        const ink = sheet.at(u, v);
        let surface = inks[ink] ?? rug;
        let texture = 1;
        if (ink === windowInk) {
          const amount = stained ? cloth.dyeAt(u, v) * (steps - 1) * 0.8 : 0;
          surface = dyedSteps[Math.min(steps - 1, Math.round(amount))] ?? rug;
          const grain =
            weave[(Math.floor(v * 2.5 + 128) & 255) * 256 + (Math.floor(u * 2.5 + 128) & 255)] ?? 0;
          // The card's edge throws a narrow shadow on the cloth beneath.
          const edge = Math.max(Math.abs(u), Math.abs(v));
          texture = (1 + 0.025 * grain) * (edge > 34 ? 0.85 : 1);
          for (const [x0, y0, angle, length] of cloth.threads) {
            const [p, q] = [u - x0, v - y0];
            if (Math.abs(p) > length || Math.abs(q) > length) continue;
            const along = p * Math.cos(angle) + q * Math.sin(angle);
            if (Math.abs(along) < length && Math.abs(q * Math.cos(angle) - p * Math.sin(angle)) < 0.15)
              surface = thread;
          }
        } else if (ink === outsideInk) texture = 0.8 + 0.4 * Math.abs(Math.sin(u * 1.3) * Math.cos(v * 1.7));
        const gain =
          (1 + (fallX * u) / 110 + (fallY * v) / 110) *
          (1 - vignette * ((2 * x) / width - 1) ** 2 - vignette * ((2 * y) / height - 1) ** 2);
        for (let band = 0; band < 3; band += 1) {
          const at = 3 * (y * width + x) + band;
          const cast = 1 + (band - 1) * warmX * (u / 110);
          light[at] = (light[at] ?? 0) + 0.5 * (surface[band] ?? 0) * texture * gain * cast;
        }
      }
  blur(light, width, height, shot.blurPx);
  if (shot.sharpen > 0) {
    const soft = light.slice();
    blur(soft, width, height, 1.2);
    for (let at = 0; at < light.length; at += 1)
      light[at] = (light[at] ?? 0) + shot.sharpen * ((light[at] ?? 0) - (soft[at] ?? 0));
  }
  return { widthPx: width, heightPx: height, channels: 3, data: expose(chance, phone, light) };
}

const serialOf = (chance: Chance): string =>
  Array.from({ length: 6 }, () => '23456789ABCDEFGHJKMNPQRSTUVWXYZ'[whole(chance, 0, 30)] ?? '2').join('');

export interface SceneChoice {
  readonly bounds?: SceneBounds;
  /** Nothing bled. */
  readonly unchanged?: boolean;
  /** Picture after: made with another card. */
  readonly otherCard?: boolean;
}

/** Draws a scene: cloth, dye, card, phone and both photographs all come from the chance. */
export function drawBlotScene(chance: Chance, choice: SceneChoice = {}): BlotScene {
  const { bounds = statedBounds, unchanged = false, otherCard = false } = choice;
  const clean = whiteOf(between(chance, 0.76, 0.9), between(chance, -0.01, 0.05));
  const dye = oneOf(chance, Object.keys(dyes) as DyeName[]);
  const amount = unchanged ? 0 : betweenLog(chance, ...bounds.amount);
  const stepOf = (step: number): Spectrum => dyed(clean, dyes[dye], (amount * step) / ((steps - 1) * 0.8));
  const cloth: Cloth = {
    clean,
    steps: Array.from({ length: steps }, (_, step) => stepOf(step)),
    dyeAt: drawBlot(chance),
    threads: Array.from({ length: whole(chance, 0, 4) }, () => [
      ...([between(chance, -30, 30), between(chance, -30, 30)] as const),
      ...([between(chance, 0, Math.PI), between(chance, 1, 12)] as const),
    ]),
  };
  const sheet = printCard(chance, serialOf(chance));
  const sensor: Sensor = drawSensor(chance);
  const take = (card: CardSheet, stained: boolean): readonly [ScenePicture, Phone] => {
    const phone = drawPhone(chance, bounds, sensor);
    return [photograph(chance, card, cloth, drawShot(chance, bounds), phone, stained), phone];
  };
  const [before] = take(sheet, false);
  const [after, phone] = take(otherCard ? printCard(chance, serialOf(chance)) : sheet, true);
  return {
    ...{ before, after, jpegQuality: phone.jpegQuality, dye },
    clean: labOfReflectance(clean),
    stained: labOfReflectance(stepOf((steps - 1) * 0.8)),
  };
}
