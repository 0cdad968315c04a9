import sharp from 'sharp';
import { makePrinter } from '../src/adapters/pdf/makePrinter.ts';
import type { RugFact } from '../src/dossier/index.ts';
import { makePaper } from '../src/papers/index.ts';
import type { Photos } from '../src/ports/photos.ts';
import { paperContextOf } from '../test/support/paperStory.ts';
import { photoName, type Told, wholeTold } from '../test/support/paperTold.ts';
import { readPdf } from '../test/support/readPdf.ts';

const photographs = 12;
const targets = { seconds: 5, mebibytes: 400 };
const [widthPx, heightPx] = [2400, 1800];

/** A picture as heavy as a phone's: noise does not compress away. */
async function paint(number: number): Promise<Buffer> {
  const [r, g, b] = [90 + number * 9, 60 + number * 4, 50 + number * 11];
  const noise = { type: 'gaussian' as const, mean: 128, sigma: 30 };
  const grain = await sharp({
    create: { width: widthPx, height: heightPx, channels: 3, background: '#808080', noise },
  })
    .png()
    .toBuffer();
  return sharp({ create: { width: widthPx, height: heightPx, channels: 3, background: { r, g, b } } })
    .composite([{ input: grain, blend: 'soft-light' }])
    .jpeg({ quality: 82 })
    .toBuffer();
}

/** Prints a whole dossier of a finished visit a few times and says how long it took and how much memory. */
export async function run(): Promise<void> {
  const pictures = new Map(
    await Promise.all(
      Array.from({ length: photographs }, async (_, at) => [photoName(at + 1), await paint(at)] as const),
    ),
  );
  const photos: Photos = {
    keep: () => Promise.reject(new Error('nothing is kept in a benchmark')),
    read: async (name) => {
      const bytes = pictures.get(name);
      return bytes === undefined ? null : { bytes, mediaType: 'image/jpeg' };
    },
    describe: async (photo) => {
      const bytes = pictures.get(photo)?.length;
      return bytes === undefined ? null : { photo, mediaType: 'image/jpeg', widthPx, heightPx, bytes };
    },
  };
  const more = Array.from(
    { length: photographs - 4 },
    (_, at): Told<RugFact> => [
      0.45,
      {
        type: 'PhotographTaken',
        photo: photoName(at + 5),
        widthPx,
        heightPx,
        shows: 'detail',
        occasion: 'intake',
      },
    ],
  );
  const told = [...wholeTold.slice(0, 5), ...more, ...wholeTold.slice(5)];
  const paper = makePaper('whole-dossier', paperContextOf({ told }));
  if (!paper.ok) throw new Error(paper.problem.code);

  const taken: { readonly milliseconds: number; readonly peakKiB: number }[] = [];
  const printer = makePrinter(photos, { onPrinted: (one) => taken.push(one) });
  let pages = 0;
  let mebibytes = 0;
  for (let turn = 0; turn < 5; turn += 1) {
    const printed = await printer.print(paper.value);
    if (!printed.ok) throw new Error(printed.problem.facts.reason);
    pages = readPdf(printed.value).pages;
    mebibytes = printed.value.length / 2 ** 20;
  }
  const slowest = Math.max(...taken.map(({ milliseconds }) => milliseconds)) / 1000;
  const most = Math.max(...taken.map(({ peakKiB }) => peakKiB)) / 1024;
  console.log(
    `whole dossier: ${pages} pages, ${photographs} photographs, ${mebibytes.toFixed(1)} MiB of PDF`,
  );
  console.log(`time, slowest of ${taken.length}: ${slowest.toFixed(2)} s (target ${targets.seconds} s)`);
  console.log(
    `most memory of the typesetting process: ${most.toFixed(0)} MiB (target ${targets.mebibytes} MiB)`,
  );
  if (slowest > targets.seconds || most > targets.mebibytes) process.exitCode = 1;
}

await run();
