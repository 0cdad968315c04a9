import sharp from 'sharp';
import { zxingCodes } from '../../src/adapters/codes/zxingCodes.ts';
import { sharpPictures } from '../../src/adapters/images/sharpPictures.ts';
import { countOnCard, readCard } from '../../src/core/card/index.ts';
import { countWeave } from '../../src/core/weave/index.ts';
import { drawCardShot, photographCard } from '../loom/cardShot.ts';
import { drawRug, layRug, seeded } from '../loom/index.ts';

const [widthPx, heightPx] = [4000, 3000];

/** A 12-megapixel JPEG of a card on a rug: drawn at half the side, which costs a quarter, then enlarged. */
async function drawLarge(): Promise<Buffer> {
  const chance = seeded(8999);
  const spec = drawCardShot(chance, 8);
  const shot = {
    ...spec.shot,
    widthPx: widthPx / 2,
    heightPx: heightPx / 2,
    pxPerMm: 9,
    rollDeg: 3,
    noise: 3,
  };
  const { look } = layRug(chance, { ...drawRug(chance), weftwiseKnotsPer7cm: 45 }, shot, 40, 40);
  const picture = photographCard(chance, { ...spec, shot }, look);
  return sharp(picture.rgb, { raw: { width: picture.width, height: picture.height, channels: 3 } })
    .resize(widthPx, heightPx, { kernel: 'cubic' })
    .jpeg({ quality: 88 })
    .toBuffer();
}

const middle = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[values.length >> 1] ?? 0;

/** Time and memory from a 12-megapixel JPEG to the answer, the card read included, beside decoding alone. */
export async function speed(): Promise<void> {
  const jpeg = await drawLarge();
  const took: { readonly decode: number; readonly card: number; readonly count: number }[] = [];
  let peak = 0;
  for (let round = 0; round < 7; round += 1) {
    const begun = performance.now();
    const decoded = await sharpPictures.decode(jpeg);
    if (!decoded.ok) throw new Error(decoded.problem.code);
    const image = decoded.value;
    const picture = { width: image.widthPx, height: image.heightPx, channels: 3, data: image.data } as const;
    const opened = performance.now();
    const reading = readCard(picture, await zxingCodes.read(image), { barMm: 100 });
    const read = performance.now();
    if (!reading.ok) throw new Error(reading.problem.code);
    const counted = round === 6 ? countWeave(picture) : countOnCard(picture, reading.value);
    const ended = performance.now();
    if (!counted.ok) console.log(`refused: ${counted.problem.code}`);
    took.push({ decode: opened - begun, card: read - opened, count: ended - read });
    peak = Math.max(peak, process.memoryUsage().rss);
  }
  const [first] = took;
  const whole = took.pop();
  const warm = took.slice(1);
  const decode = middle(warm.map((one) => one.decode));
  const card = middle(warm.map((one) => one.card));
  const count = middle(warm.map((one) => one.count));
  const all = decode + card + count;
  const ms = (value: number | undefined): string => `${(value ?? 0).toFixed(0)} ms`;
  console.log(
    [
      '',
      `12 megapixels with a card, warm: decode ${ms(decode)}, card ${ms(card)}, count ${ms(count)}; together ${ms(all)}, ${(all / decode).toFixed(1)} times decoding alone.`,
      `First run of the process: decode ${ms(first?.decode)}, card ${ms(first?.card)}, count ${ms(first?.count)}.`,
      `The same picture without its card, the whole of it counted: ${ms(whole?.count)}. Memory of the process at most ${(peak / 1e6).toFixed(0)} MB.`,
    ].join('\n'),
  );
}
