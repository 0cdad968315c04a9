import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { sharpPictures } from '../../src/adapters/images/sharpPictures.ts';
import type { Axis } from '../../src/core/weave/candidate.ts';
import type { Picture } from '../../src/core/weave/index.ts';
import { drawClothPicture } from '../loom/cloth.ts';
import { betweenLog, drawLoomPicture, type LoomPicture, type LoomTruth, seeded } from '../loom/index.ts';

/** What is fair to count in a picture, and what kind of picture it is. */
export interface Shown {
  /** Repeats an honest eye may count along each axis [px]. */
  readonly fair: Readonly<Record<Axis, readonly number[]>>;
  /** Directions along which repeats are crossed [°, clockwise from the picture's horizontal and vertical]. */
  readonly angleDeg: Readonly<Record<Axis, number>>;
  readonly groups: readonly string[];
}

export type ShownKind = 'rug' | 'cloth';

const fairOf = (truth: LoomTruth): Shown['fair'] => ({
  weftwise:
    truth.nodesPerKnot === 'either' ? [truth.knotPx / 2, truth.knotPx] : [truth.knotPx / truth.nodesPerKnot],
  warpwise: [truth.rowPx],
});

const pxGroup = (pitch: number): string => {
  const bounds = [6, 8, 12, 20, 40];
  const low = [0, ...bounds].filter((bound) => bound <= pitch).pop() ?? 0;
  const high = bounds.find((bound) => bound > pitch);
  return `px per repeat ${low} to ${high ?? '…'}`;
};

function rugGroups({ rug }: LoomPicture): readonly string[] {
  const level =
    rug.depressionDeg <= 25
      ? 'level warps'
      : rug.depressionDeg < 65
        ? 'half depressed warps'
        : 'depressed warps';
  return [
    level,
    rug.knot,
    `${rug.wefts} weft${rug.wefts === 2 ? 's' : ''}`,
    rug.weftShare > 0.2 ? 'wefts show' : 'wefts hidden',
    rug.waviness > 0.4 ? 'wavy wefts' : 'straight wefts',
    ...(rug.offset ? ['offset rows'] : []),
    rug.design.kind === 'plain' ? 'one colour' : `design ${rug.design.kind}`,
  ];
}

const jpegOf = (
  picture: { readonly width: number; readonly height: number; readonly rgb: Uint8Array },
  quality: number,
): Promise<Buffer> =>
  sharp(picture.rgb, { raw: { width: picture.width, height: picture.height, channels: 3 } })
    .jpeg({ quality })
    .toBuffer();

export const decode = async (jpeg: Uint8Array): Promise<Picture> => {
  const decoded = await sharpPictures.decode(jpeg);
  if (!decoded.ok) throw new Error(decoded.problem.code);
  const { widthPx, heightPx, data } = decoded.value;
  return { width: widthPx, height: heightPx, channels: 3, data };
};

/** A picture through the camera's own file, as a counter gets it. */
export const throughJpeg = async (
  picture: { readonly width: number; readonly height: number; readonly rgb: Uint8Array },
  quality: number,
): Promise<Picture> => decode(await jpegOf(picture, quality));

async function draw(
  kind: ShownKind,
  seed: number,
): Promise<{ readonly jpeg: Buffer; readonly shown: Shown }> {
  const chance = seeded(seed);
  const px = betweenLog(chance, 4, 60);
  if (kind === 'cloth') {
    const cloth = drawClothPicture(chance, px);
    const { rollDeg } = cloth.shot;
    const fair = cloth.truth;
    return {
      jpeg: await jpegOf(cloth, cloth.shot.jpegQuality),
      shown: {
        fair,
        angleDeg: { weftwise: rollDeg, warpwise: rollDeg },
        groups: [cloth.cloth.binding, pxGroup(Math.min(fair.weftwise[0] ?? 0, fair.warpwise[0] ?? 0))],
      },
    };
  }
  const loom = drawLoomPicture(chance, px);
  const fair = fairOf(loom.truth);
  return {
    jpeg: await jpegOf(loom, loom.shot.jpegQuality),
    shown: {
      fair,
      angleDeg: { weftwise: loom.truth.angleDeg, warpwise: loom.shot.rollDeg },
      groups: [...rugGroups(loom), pxGroup(Math.min(fair.weftwise[0] ?? 0, fair.warpwise[0] ?? 0))],
    },
  };
}

/**
 * The picture of a seed, drawn, or read from a folder where an earlier run kept it.
 *
 * @param keep - folder for drawn pictures; to be emptied by hand when the loom changes
 */
export async function shownPicture(
  kind: ShownKind,
  seed: number,
  keep: string | null,
): Promise<{ readonly picture: Picture; readonly shown: Shown }> {
  const [jpegPath, truthPath] = ['jpg', 'json'].map((ending) =>
    join(keep ?? '', `${kind}-${seed}.${ending}`),
  ) as [string, string];
  if (keep !== null && existsSync(truthPath)) {
    const shown: Shown = JSON.parse(readFileSync(truthPath, 'utf8'));
    return { picture: await decode(readFileSync(jpegPath)), shown };
  }
  const { jpeg, shown } = await draw(kind, seed);
  if (keep !== null) {
    mkdirSync(keep, { recursive: true });
    writeFileSync(jpegPath, jpeg);
    // The truth comes last and whole, so that a run broken off leaves no picture without it.
    writeFileSync(`${truthPath}.part`, JSON.stringify(shown));
    renameSync(`${truthPath}.part`, truthPath);
  }
  return { picture: await decode(jpeg), shown };
}
