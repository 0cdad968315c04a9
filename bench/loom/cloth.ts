import { cameraOver, type Picture, photograph } from './camera.ts';
import { between, betweenLog, type Chance, normal, oneOf, wandering, whole } from './chance.ts';
import { daylight } from './daylight.ts';
import { lookAt } from './index.ts';
import { type Rgb, type ShotSpec, wools } from './rugSpec.ts';

/** How the threads of a plain cloth cross. */
export const bindings = ['plain', 'basket', 'twill 2/1', 'twill 2/2', 'twill 3/1', 'rep'] as const;

/** A cloth without pile: canvas, sacking, twill, rep. */
export interface ClothSpec {
  readonly binding: (typeof bindings)[number];
  /** Distance from thread to thread, across (warps) and along (wefts) [mm]. */
  readonly warpEveryMm: number;
  readonly weftEveryMm: number;
  /** Width of a thread as a share of its distance: under 1 holes are seen. */
  readonly warpFill: number;
  readonly weftFill: number;
  readonly warpColours: readonly Rgb[];
  readonly weftColours: readonly Rgb[];
  /** Threads of one colour side by side. */
  readonly stripe: number;
  /** Standard deviation of thread places and of thread width [share of the distance]. */
  readonly jitter: number;
  readonly slub: number;
  readonly hair: number;
  readonly dirt: number;
}

export interface ClothPicture extends Picture {
  readonly cloth: ClothSpec;
  readonly shot: ShotSpec;
  /** Distance of threads at the picture's centre [px]; of a basket's pairs as well, which are fair to count. */
  readonly truth: { readonly weftwise: readonly number[]; readonly warpwise: readonly number[] };
}

const isWarpOver = (binding: ClothSpec['binding'], warp: number, weft: number): boolean => {
  switch (binding) {
    case 'plain':
    case 'rep':
      return (warp + weft) % 2 === 0;
    case 'basket':
      return ((warp >> 1) + (weft >> 1)) % 2 === 0;
    case 'twill 2/1':
      return (warp + weft) % 3 < 2;
    case 'twill 2/2':
      return (warp + weft) % 4 < 2;
    case 'twill 3/1':
      return (warp + weft) % 4 < 3;
  }
};

const placesOf = (chance: Chance, count: number, every: number, jitter: number): Float64Array => {
  const places = new Float64Array(count);
  for (let index = 1; index < count; index += 1)
    places[index] = (places[index - 1] ?? 0) + every * Math.max(0.5, 1 + jitter * normal(chance));
  return places;
};

const linear = (colour: Rgb): Rgb => colour.map((level) => (level / 255) ** 2.2) as unknown as Rgb;

interface Thread {
  readonly place: number;
  readonly half: number;
  readonly colour: Rgb;
  readonly wander: (at: number) => number;
  readonly thick: (at: number) => number;
}

/** Draws a cloth from canvas to sacking; each measure is the widest that is asked for. */
export function drawClothSpec(chance: Chance): ClothSpec {
  const binding = oneOf<ClothSpec['binding']>(chance, [
    'plain',
    'plain',
    'plain',
    'basket',
    'twill 2/1',
    'twill 2/2',
    'twill 3/1',
    'rep',
  ]);
  const every = betweenLog(chance, 0.4, 4);
  const colours = Object.values(wools);
  const one = oneOf(chance, colours);
  const alike = chance() < 0.6;
  const striped = chance() < 0.2;
  const hues = (): readonly Rgb[] =>
    striped ? [oneOf(chance, colours), oneOf(chance, colours)] : [alike ? one : oneOf(chance, colours)];
  return {
    binding,
    warpEveryMm: every,
    weftEveryMm: every * (binding === 'rep' ? between(chance, 0.3, 0.55) : betweenLog(chance, 0.7, 1.4)),
    warpFill: binding === 'rep' ? between(chance, 0.4, 0.6) : between(chance, 0.5, 0.98),
    weftFill: binding === 'rep' ? between(chance, 0.95, 1.1) : between(chance, 0.5, 0.98),
    warpColours: hues(),
    weftColours: hues(),
    stripe: whole(chance, 2, 14),
    jitter: between(chance, 0.01, 0.08),
    slub: between(chance, 0.02, 0.2),
    hair: between(chance, 0.02, 0.25),
    dirt: between(chance, 0, 0.3),
  };
}

/** Weaves and photographs a cloth. */
export function weaveCloth(chance: Chance, cloth: ClothSpec, shot: ShotSpec): ClothPicture {
  const { toPicture, toPlane } = cameraOver(shot);
  const corners = [
    [0, 0],
    [shot.widthPx, 0],
    [0, shot.heightPx],
    [shot.widthPx, shot.heightPx],
  ].map(([x = 0, y = 0]) => toPlane(x, y));
  const wideMm = 2.15 * Math.max(...corners.map(([x]) => Math.abs(x)));
  const highMm = 2.15 * Math.max(...corners.map(([, y]) => Math.abs(y)));
  const finer = Math.min(cloth.warpEveryMm, cloth.weftEveryMm);
  const pxPerMm = shot.pxPerMm * Math.min(2.5, Math.max(1.25, 14 / (shot.pxPerMm * finer)));
  const wide = Math.ceil(wideMm * pxPerMm);
  const high = Math.ceil(highMm * pxPerMm);
  const warpPlaces = placesOf(
    chance,
    Math.ceil(wideMm / cloth.warpEveryMm) + 2,
    cloth.warpEveryMm,
    cloth.jitter,
  );
  const weftPlaces = placesOf(
    chance,
    Math.ceil(highMm / cloth.weftEveryMm) + 2,
    cloth.weftEveryMm,
    cloth.jitter,
  );
  const threads = (
    places: Float64Array,
    every: number,
    fill: number,
    colours: readonly Rgb[],
  ): readonly Thread[] =>
    Array.from(places, (place, index) => {
      const shade = 1 + 0.06 * normal(chance);
      const steps = whole(chance, 4, 14);
      const [wander, thick] = [wandering(chance, steps), wandering(chance, 4 * steps)];
      const colour = linear(colours[Math.floor(index / cloth.stripe) % colours.length] ?? [128, 128, 128]);
      return {
        place,
        half: (every * fill) / 2,
        colour: colour.map((light) => light * shade) as unknown as Rgb,
        wander: (at) => 0.12 * every * wander(at * steps),
        thick: (at) => 1 + cloth.slub * thick(at * 4 * steps),
      };
    });
  const warps = threads(warpPlaces, cloth.warpEveryMm, cloth.warpFill, cloth.warpColours);
  const wefts = threads(weftPlaces, cloth.weftEveryMm, cloth.weftFill, cloth.weftColours);
  const height = new Float32Array(wide * high).fill(-1.2 * finer);
  const colour = new Float32Array(wide * high * 3).fill(0.03);
  // In a rep the warps hang straight and the wefts bend round them; otherwise both bend.
  const [warpBend, weftBend] = cloth.binding === 'rep' ? [0.05, 0.5] : [0.3, 0.3];
  const lay = (thread: Thread, index: number, isWarp: boolean): void => {
    const [length, others] = isWarp ? [high, weftPlaces] : [wide, warpPlaces];
    const bend = (isWarp ? warpBend : weftBend) * finer;
    const lift = (other: number): number =>
      isWarpOver(cloth.binding, isWarp ? index : other, isWarp ? other : index) === isWarp ? 1 : -1;
    let next = 0;
    for (let along = 0; along < length; along += 1) {
      const at = along / pxPerMm;
      while (next < others.length - 1 && (others[next] ?? 0) <= at) next += 1;
      const before = Math.max(0, next - 1);
      const [from, to] = [others[before] ?? 0, others[next] ?? 1];
      const ease =
        (1 - Math.cos(Math.PI * Math.min(1, Math.max(0, (at - from) / Math.max(1e-6, to - from))))) / 2;
      const crown = bend * (lift(before) * (1 - ease) + lift(next) * ease);
      const share = along / length;
      const middle = thread.place + thread.wander(share);
      const half = thread.half * thread.thick(share);
      const first = Math.max(0, Math.ceil((middle - half) * pxPerMm));
      const last = Math.min((isWarp ? wide : high) - 1, Math.floor((middle + half) * pxPerMm));
      for (let cross = first; cross <= last; cross += 1) {
        const off = (cross / pxPerMm - middle) / half;
        const z = crown + 0.6 * half * Math.sqrt(Math.max(0, 1 - off * off));
        const place = isWarp ? along * wide + cross : cross * wide + along;
        if (z <= (height[place] ?? 0)) continue;
        height[place] = z;
        const twist = 1 + 0.12 * Math.cos((2 * Math.PI * (at + off * half)) / Math.max(0.15, 1.3 * half));
        for (let band = 0; band < 3; band += 1) colour[3 * place + band] = (thread.colour[band] ?? 0) * twist;
      }
    }
  };
  for (const [index, warp] of warps.entries()) lay(warp, index, true);
  for (const [index, weft] of wefts.entries()) lay(weft, index, false);
  const lit = daylight(
    chance,
    {
      weftwiseKnotsPer7cm: 70 / cloth.warpEveryMm,
      warpwiseKnotsPer7cm: 70 / cloth.weftEveryMm,
      dirt: cloth.dirt,
      hair: cloth.hair,
    },
    shot,
    { wide, high, pxPerMm, height, colour },
  );
  const picture = photograph(chance, shot, lookAt(lit, wide, high, pxPerMm));
  const meanOf = (places: Float64Array, lengthMm: number, seenMm: number): number => {
    const inside = places.filter((place) => Math.abs(place - lengthMm / 2) <= 0.45 * seenMm);
    return ((inside[inside.length - 1] ?? 0) - (inside[0] ?? 0)) / Math.max(1, inside.length - 1);
  };
  const across = meanOf(warpPlaces, wide / pxPerMm, shot.widthPx / shot.pxPerMm);
  const along = meanOf(weftPlaces, high / pxPerMm, shot.heightPx / shot.pxPerMm);
  const lengthPx = (dx: number, dy: number): number => {
    const [x1, y1] = toPicture(dx / 2, dy / 2);
    const [x0, y0] = toPicture(-dx / 2, -dy / 2);
    return Math.hypot(x1 - x0, y1 - y0);
  };
  const fair = (pitch: number): readonly number[] =>
    cloth.binding === 'basket' ? [pitch, 2 * pitch] : [pitch];
  return {
    ...picture,
    cloth,
    shot,
    truth: { weftwise: fair(lengthPx(across, 0)), warpwise: fair(lengthPx(0, along)) },
  };
}

/** A cloth and a photograph of it, both drawn from chance, at so many pixels to the finer thread. */
export function drawClothPicture(chance: Chance, pxPerThread: number): ClothPicture {
  const cloth = drawClothSpec(chance);
  const finer = Math.min(cloth.warpEveryMm, cloth.weftEveryMm);
  const coarser = Math.max(cloth.warpEveryMm, cloth.weftEveryMm) / finer;
  const widthPx = Math.min(1400, Math.max(400, Math.round(pxPerThread * coarser * between(chance, 20, 50))));
  return weaveCloth(chance, cloth, {
    widthPx,
    heightPx: Math.round(widthPx * between(chance, 0.75, 1)),
    pxPerMm: Math.min(pxPerThread, 90 / coarser) / finer,
    rollDeg: chance() < 0.7 ? between(chance, -5, 5) : between(chance, -15, 15),
    tiltDeg: chance() < 0.7 ? between(chance, 0, 5) : between(chance, 5, 14),
    tiltTowardsDeg: between(chance, 0, 360),
    lightFromDeg: between(chance, 0, 360),
    lightHeightDeg: between(chance, 20, 75),
    lightFall: between(chance, 0, 0.6),
    blurPx: between(chance, 0.4, Math.min(2, 0.22 * pxPerThread)),
    sharpen: chance() < 0.5 ? 0 : between(chance, 0.2, 1),
    noise: between(chance, 1, 14),
    jpegQuality: whole(chance, 60, 95),
  });
}
