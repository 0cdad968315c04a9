import { between, type Chance, normal, wandering } from './chance.ts';
import type { Cartoon } from './design.ts';
import type { Rgb, RugSpec } from './rugSpec.ts';

/** The back of a rug as a raster: how high the yarn lies and what light it returns, before any camera. */
export interface WovenBack {
  readonly wide: number;
  readonly high: number;
  readonly pxPerMm: number;
  /** Height [mm]. */
  readonly height: Float32Array;
  /** Linear reflectance 0 … 1, three to a pixel. */
  readonly colour: Float32Array;
  /** Left edge of every knot and upper edge of every row, unwaved [mm]. */
  readonly knotEdges: Float64Array;
  readonly rowEdges: Float64Array;
  /** How far a row's lower edge strays at x from `rowEdges` [mm]. */
  readonly stray: (xMm: number, row: number) => number;
}

const linear = (level: number): number => (level / 255) ** 2.2;

const edgesOf = (
  chance: Chance,
  count: number,
  pitch: number,
  jitter: number,
  drift: number,
): Float64Array => {
  const slow = wandering(chance, 6);
  const edges = new Float64Array(count + 1);
  for (let index = 0; index < count; index += 1) {
    const stretch = 1 + drift * slow((index / count) * 6) + jitter * normal(chance) * 0.5;
    edges[index + 1] = (edges[index] ?? 0) + pitch * Math.max(0.5, stretch);
  }
  return edges;
};

/**
 * Ties the knots: warps and rows are laid with their irregularity, wefts run over and under between the
 * rows, and every node is a piece of yarn over its warp that hides what lies lower.
 */
export function weaveBack(chance: Chance, rug: RugSpec, cartoon: Cartoon, pxPerMm: number): WovenBack {
  const knotMm = 70 / rug.weftwiseKnotsPer7cm;
  const rowMm = 70 / rug.warpwiseKnotsPer7cm;
  const knotEdges = edgesOf(chance, cartoon.across, knotMm, rug.warpJitter, rug.drift);
  const rowEdges = edgesOf(chance, cartoon.along, rowMm, rug.rowJitter, rug.drift);
  const wide = Math.ceil((knotEdges[cartoon.across] ?? 0) * pxPerMm);
  const high = Math.ceil((rowEdges[cartoon.along] ?? 0) * pxPerMm);
  const height = new Float32Array(wide * high).fill(-0.8 * knotMm);
  const colour = new Float32Array(wide * high * 3).fill(0.05);

  const waveAcross = Array.from({ length: 5 }, () =>
    wandering(chance, Math.max(2, cartoon.across / between(chance, 6, 20))),
  );
  const commonWave = wandering(chance, Math.max(2, cartoon.across / between(chance, 6, 20)));
  const waveAlong = wandering(chance, 4);
  const skew = Math.tan((rug.skewDeg * Math.PI) / 180);
  const wavesAcross = Math.max(2, cartoon.across / 12);
  /** How far a weft strays from its straight line at x [mm]. */
  const stray = (x: number, row: number): number => {
    const band = (row / cartoon.along) * (waveAcross.length - 1.001);
    const lower = Math.floor(band);
    const at = (x / (wide / pxPerMm)) * wavesAcross;
    const a = waveAcross[lower]?.(at) ?? 0;
    const b = waveAcross[lower + 1]?.(at) ?? 0;
    return (
      rowMm * rug.waviness * (0.75 * commonWave(at) + 0.25 * (a + (b - a) * (band - lower))) +
      skew * (x - wide / pxPerMm / 2)
    );
  };
  const lean = (y: number): number => 0.3 * knotMm * waveAlong((y / (high / pxPerMm)) * 4);

  const depression = (rug.depressionDeg * Math.PI) / 180;
  const backShare = Math.cos(depression) / 2;
  const warpDepthMm = 0.45 * knotMm * Math.sin(depression);

  const layWeft = (row: number, which: number): void => {
    const share = Math.max(0.03, rug.weftShare) / rug.wefts;
    const half = (rowMm * share) / 2;
    const middle = (rowEdges[row + 1] ?? 0) + (which - (rug.wefts - 1) / 2) * rowMm * share;
    const [red, green, blue] = rug.weftColour.map(linear) as unknown as Rgb;
    const shade = 1 + 0.1 * normal(chance);
    for (let px = 0; px < wide; px += 1) {
      const x = px / pxPerMm;
      const y = middle + stray(x, row);
      const over = Math.cos((2 * Math.PI * x) / knotMm + Math.PI * (which + row));
      const twist = 0.85 + 0.15 * Math.cos((2 * Math.PI * (x + 0.3 * y)) / Math.max(0.3, 2 * half));
      const crown = -0.28 * knotMm + 0.12 * knotMm * over;
      for (
        let py = Math.max(0, Math.ceil((y - half) * pxPerMm));
        py <= Math.min(high - 1, (y + half) * pxPerMm);
        py += 1
      ) {
        const across = (py / pxPerMm - y) / half;
        const z = crown + half * Math.sqrt(Math.max(0, 1 - across * across)) * twist;
        const at = py * wide + px;
        if (z <= (height[at] ?? 0)) continue;
        height[at] = z;
        colour[3 * at] = red * shade;
        colour[3 * at + 1] = green * shade;
        colour[3 * at + 2] = blue * shade;
      }
    }
  };

  const layNode = (
    x: number,
    y: number,
    halfWide: number,
    halfHigh: number,
    depth: number,
    tilt: number,
    wool: Rgb,
    shade: number,
  ): void => {
    const crown = 0.5 * Math.min(halfWide, halfHigh) * 2 * rug.relief;
    const cos = Math.cos(tilt);
    const sin = Math.sin(tilt);
    const phase = 2 * Math.PI * chance();
    const reach = Math.hypot(halfWide, halfHigh);
    const left = Math.max(0, Math.ceil((x - Math.min(reach, halfWide * 1.3)) * pxPerMm));
    const right = Math.min(wide - 1, Math.floor((x + Math.min(reach, halfWide * 1.3)) * pxPerMm));
    const top = Math.max(0, Math.ceil((y - Math.min(reach, halfHigh * 1.4)) * pxPerMm));
    const bottom = Math.min(high - 1, Math.floor((y + Math.min(reach, halfHigh * 1.4)) * pxPerMm));
    for (let py = top; py <= bottom; py += 1)
      for (let px = left; px <= right; px += 1) {
        const dx = px / pxPerMm - x;
        const dy = py / pxPerMm - y;
        const u = Math.abs(dx * cos + dy * sin) / halfWide;
        const v = Math.abs(dy * cos - dx * sin) / halfHigh;
        const out = u * u * Math.sqrt(u) + v * v * Math.sqrt(v);
        if (out >= 1) continue;
        const ply = rug.plies > 1 ? Math.cos((Math.PI * rug.plies * (dy + 0.6 * dx)) / halfHigh + phase) : 0;
        const z = -depth + crown * (Math.sqrt(1 - out) + rug.plyDepth * 0.5 * ply) - 0.1 * knotMm;
        const at = py * wide + px;
        if (z <= (height[at] ?? 0)) continue;
        height[at] = z;
        const tone = shade * (1 + 0.3 * rug.plyDepth * ply);
        colour[3 * at] = wool[0] * tone;
        colour[3 * at + 1] = wool[1] * tone;
        colour[3 * at + 2] = wool[2] * tone;
      }
  };

  for (let row = 0; row < cartoon.along; row += 1)
    for (let which = 0; which < rug.wefts; which += 1) layWeft(row, which);

  const lineColours = rug.design.colours.map((wool) => wool.map(linear) as unknown as Rgb);
  const abrash = wandering(chance, 9);
  for (let row = 0; row < cartoon.along; row += 1) {
    const middle = ((rowEdges[row] ?? 0) + (rowEdges[row + 1] ?? 0)) / 2;
    const rowHigh = (rowEdges[row + 1] ?? 0) - (rowEdges[row] ?? 0);
    const shadeOfRow = 1 + rug.design.abrash * abrash((row / cartoon.along) * 9);
    const shift = rug.offset && row % 2 === 1 ? 0.5 : 0;
    for (let knot = 0; knot < cartoon.across; knot += 1) {
      const edge = knotEdges[knot] ?? 0;
      const width = (knotEdges[knot + 1] ?? 0) - edge;
      const start = edge + shift * width + lean(middle);
      const wool = lineColours[cartoon.colour[row * cartoon.across + knot] ?? 0];
      if (wool === undefined) throw new Error('a knot without wool');
      const shadeOfKnot = shadeOfRow * (1 + 0.06 * normal(chance));
      for (const node of [0, 1] as const) {
        const share = node === 0 ? 1 - backShare : backShare;
        if (share < 0.02) continue;
        const centre = node === 0 ? (1 - backShare) / 2 : 1 - backShare / 2;
        const drawn = centre + rug.pairing * (node === 0 ? 1 : -1);
        const x = start + drawn * width + rug.nodeJitter * 0.35 * width * share * normal(chance);
        const y = middle + stray(x, row) + rug.nodeJitter * 0.3 * rowHigh * normal(chance);
        const tilt = rug.knot === 'symmetric' ? (node === 0 ? 0.12 : -0.12) : 0.15;
        const loose = rug.knot === 'asymmetric' && node === 1 ? 0.92 : 1;
        layNode(
          x,
          y,
          (width * share * loose * 1.04) / 2,
          (rowHigh * (1 - 0.75 * rug.weftShare) * (1 + rug.nodeJitter * 0.5 * normal(chance)) * 1.02) / 2,
          node === 1 ? warpDepthMm : 0,
          tilt,
          wool,
          shadeOfKnot * (1 + 0.04 * normal(chance)) * loose,
        );
      }
    }
  }
  return { wide, high, pxPerMm, height, colour, knotEdges, rowEdges, stray };
}
