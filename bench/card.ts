import sharp from 'sharp';
import { zxingCodes } from '../src/adapters/codes/zxingCodes.ts';
import { sharpPictures } from '../src/adapters/images/sharpPictures.ts';
import { type CornerName, project, readCard, readLooseCard } from '../src/core/card/index.ts';
import { drawCardShot, photographCard } from './loom/cardShot.ts';
import { seeded } from './loom/index.ts';
import { drawLooseShot, photographLoose } from './loom/looseShot.ts';

interface Case {
  readonly name: string;
  readonly mostTiltDeg: number;
  readonly hidden: readonly CornerName[];
  /** Four pieces beside the corners of a rug, not the sheet with a window. */
  readonly loose?: true;
}

const cases: readonly Case[] = [
  { name: 'four codes, tilt to 25°', mostTiltDeg: 25, hidden: [] },
  { name: 'four codes, tilt to 40°', mostTiltDeg: 40, hidden: [] },
  { name: 'three codes, tilt to 40°', mostTiltDeg: 40, hidden: ['B'] },
  { name: 'two codes side by side', mostTiltDeg: 40, hidden: ['A', 'B'] },
  { name: 'two codes across', mostTiltDeg: 40, hidden: ['A', 'C'] },
  { name: 'four loose pieces', mostTiltDeg: 40, hidden: [], loose: true },
  { name: 'three loose pieces', mostTiltDeg: 40, hidden: ['B'], loose: true },
  { name: 'two loose pieces', mostTiltDeg: 25, hidden: ['B', 'D'], loose: true },
];

const quantile = (values: readonly number[], share: number): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
};

/** Scale error of the weave card on rendered photographs of known perspective: `card [pictures per case]`. */
export async function run(args: readonly string[]): Promise<void> {
  const each = Number(args[0] ?? 40);
  console.log('case | accepted | median % | 95 % | worst % | inside interval | read ms');
  for (const [index, { name, mostTiltDeg, hidden, loose = false }] of cases.entries()) {
    const errors: number[] = [];
    const took: number[] = [];
    let inside = 0;
    const refusals = new Map<string, number>();
    for (let seed = 0; seed < each; seed += 1) {
      const chance = seeded(70_000 + 1000 * index + seed);
      const spec = loose
        ? drawLooseShot(
            chance,
            mostTiltDeg,
            (['A', 'B', 'C', 'D'] as const).filter((corner) => !hidden.includes(corner)),
          )
        : drawCardShot(chance, mostTiltDeg, hidden);
      const shot = 'pieces' in spec ? photographLoose(chance, spec) : photographCard(chance, spec);
      const jpeg = await sharp(shot.rgb, { raw: { width: shot.width, height: shot.height, channels: 3 } })
        .jpeg({ quality: spec.shot.jpegQuality })
        .toBuffer();
      const decoded = await sharpPictures.decode(jpeg);
      if (!decoded.ok) throw new Error(decoded.problem.code);
      const image = decoded.value;
      const begun = performance.now();
      const codes = await zxingCodes.read(image);
      const reading = (loose ? readLooseCard : readCard)(
        { width: image.widthPx, height: image.heightPx, channels: 3, data: image.data },
        codes,
        { barMm: 100 },
      );
      took.push(performance.now() - begun);
      if (!reading.ok) {
        refusals.set(reading.problem.code, (refusals.get(reading.problem.code) ?? 0) + 1);
        continue;
      }
      const { mmPerPx, interval95, homography } = reading.value;
      // Loose pieces state the scale at their middle, wherever that fell.
      const truth = 'mmPerPx' in shot ? shot.mmPerPx : shot.mmPerPxAt(...project(homography, 0, 0));
      errors.push(100 * Math.abs(mmPerPx / truth - 1));
      if (truth >= interval95[0] && truth <= interval95[1]) inside += 1;
    }
    const shown = [quantile(errors, 0.5), quantile(errors, 0.95), Math.max(...errors)].map((value) =>
      value.toFixed(3),
    );
    console.log(
      `${name} | ${errors.length}/${each} | ${shown.join(' | ')} | ${((100 * inside) / Math.max(1, errors.length)).toFixed(0)} % | ${quantile(took, 0.5).toFixed(0)}`,
      [...refusals].map(([code, count]) => `${code} ${count}`).join(', '),
    );
  }
}

await run(process.argv.slice(2));
