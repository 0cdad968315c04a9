import sharp from 'sharp';
import { sharpPictures } from '../src/adapters/images/sharpPictures.ts';
import { type AxisCount, countWeave, type Picture, type Taps } from '../src/core/weave/index.ts';
import { betweenLog, drawLoomPicture, type LoomPicture, normal, seeded } from './loom/index.ts';
import { blurred, drawNotWoven } from './loom/notWoven.ts';

/** Seeds from here on were never looked at while the counter was made. */
const heldOut = 9000;

type Axis = 'weftwise' | 'warpwise';

interface Outcome {
  readonly axis: Axis;
  readonly groups: readonly string[];
  readonly accepted: boolean;
  readonly confidence: number;
  /** Share by which the pitch is off the nearest fair truth. */
  readonly off: number;
  readonly inside: boolean;
  readonly tappedOff: number;
}

const fairPitches = ({ truth }: LoomPicture, axis: Axis): readonly number[] => {
  if (axis === 'warpwise') return [truth.rowPx];
  if (truth.nodesPerKnot === 'either') return [truth.knotPx / 2, truth.knotPx];
  return [truth.knotPx / truth.nodesPerKnot];
};

const offFrom = (fair: readonly number[], pitch: number): number =>
  Math.min(...fair.map((one) => Math.abs(pitch / one - 1)));

const jpegOf = (
  picture: { readonly width: number; readonly height: number; readonly rgb: Uint8Array },
  quality: number,
): Promise<Buffer> =>
  sharp(picture.rgb, { raw: { width: picture.width, height: picture.height, channels: 3 } })
    .jpeg({ quality })
    .toBuffer();

const decode = async (jpeg: Uint8Array): Promise<Picture> => {
  const decoded = await sharpPictures.decode(jpeg);
  if (!decoded.ok) throw new Error(decoded.problem.code);
  const { widthPx, heightPx, data } = decoded.value;
  return { width: widthPx, height: heightPx, channels: 3, data };
};

/** Two taps on knots seven repeats apart, each a tenth of a repeat off, as by a careful finger. */
function tapsOn(picture: LoomPicture, seed: number): readonly Taps[] {
  const chance = seeded(seed + 500_000);
  const angle = (picture.truth.angleDeg * Math.PI) / 180;
  const roll = (picture.shot.rollDeg * Math.PI) / 180;
  return (['weftwise', 'warpwise'] as const).map((axis) => {
    const pitch = fairPitches(picture, axis)[0] ?? 1;
    const [dx, dy] =
      axis === 'weftwise' ? [Math.cos(angle), Math.sin(angle)] : [-Math.sin(roll), Math.cos(roll)];
    const repeats = Math.max(
      3,
      Math.min(7, Math.floor((0.7 * Math.min(picture.width, picture.height)) / pitch)),
    );
    const half = (repeats * pitch) / 2;
    const end = (side: number): readonly [number, number] => {
      const reach = side * half + 0.1 * pitch * normal(chance);
      return [picture.width / 2 + reach * dx, picture.height / 2 + reach * dy];
    };
    return { from: end(-1), to: end(1), repeats };
  });
}

const pxGroup = (pitch: number): string => {
  const bounds = [6, 8, 12, 20, 40, 1000];
  const low = [0, ...bounds].filter((bound) => bound <= pitch).pop() ?? 0;
  const high = bounds.find((bound) => bound > pitch) ?? 1000;
  return `px per repeat ${low} to ${high === 1000 ? '…' : high}`;
};

async function countOne(seed: number): Promise<readonly Outcome[]> {
  const chance = seeded(seed);
  const loom = drawLoomPicture(chance, betweenLog(chance, 4, 60));
  const picture = await decode(await jpegOf(loom, loom.shot.jpegQuality));
  const counted = countWeave(picture);
  const tapped = countWeave(picture, { taps: tapsOn(loom, seed) });
  const { rug } = loom;
  const level =
    rug.depressionDeg <= 25
      ? 'level warps'
      : rug.depressionDeg < 65
        ? 'half depressed warps'
        : 'depressed warps';
  return (['weftwise', 'warpwise'] as const).map((axis) => {
    const fair = fairPitches(loom, axis);
    const mine: AxisCount | null = counted.ok ? counted.value[axis] : null;
    const nearest =
      mine === null
        ? 0
        : ([...fair].sort((a, b) => Math.abs(a - mine.pitchPx) - Math.abs(b - mine.pitchPx))[0] ?? 0);
    return {
      axis,
      groups: [
        level,
        rug.knot,
        `${rug.wefts} weft${rug.wefts === 2 ? 's' : ''}`,
        rug.weftShare > 0.2 ? 'wefts show' : 'wefts hidden',
        ...(rug.offset ? ['offset rows'] : []),
        rug.design.kind === 'plain' ? 'one colour' : `design ${rug.design.kind}`,
        pxGroup(fair[0] ?? 0),
      ],
      accepted: mine !== null,
      confidence: mine?.confidence ?? 0,
      off: mine === null ? Number.NaN : offFrom(fair, mine.pitchPx),
      inside: mine !== null && nearest >= mine.pitchInterval95[0] && nearest <= mine.pitchInterval95[1],
      tappedOff: tapped.ok ? offFrom([fair[0] ?? 0], tapped.value[axis].pitchPx) : Number.NaN,
    };
  });
}

const quantile = (values: readonly number[], share: number): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
};

const percent = (share: number): string => (Number.isNaN(share) ? '–' : `${(100 * share).toFixed(1)} %`);

function line(name: string, outcomes: readonly Outcome[]): string {
  const accepted = outcomes.filter((one) => one.accepted);
  const right = accepted.filter(({ off }) => off <= 0.05);
  return [
    name.padEnd(26),
    String(outcomes.length).padStart(5),
    percent(accepted.length / outcomes.length).padStart(8),
    percent(right.length / accepted.length).padStart(8),
    percent(accepted.filter(({ off }) => off <= 0.02).length / accepted.length).padStart(8),
    percent(
      quantile(
        right.map(({ off }) => off),
        0.5,
      ),
    ).padStart(8),
    percent(right.filter(({ inside }) => inside).length / right.length).padStart(8),
  ].join(' | ');
}

async function speed(): Promise<void> {
  const chance = seeded(heldOut - 1);
  const loom = drawLoomPicture(chance, 11);
  const tile = await jpegOf(loom, 90);
  const across = Math.ceil(4000 / loom.width);
  const along = Math.ceil(3000 / loom.height);
  const tiles = Array.from({ length: across * along }, (_, index) => ({
    input: tile,
    left: (index % across) * loom.width,
    top: Math.floor(index / across) * loom.height,
  }));
  const whole = await sharp({
    create: { width: across * loom.width, height: along * loom.height, channels: 3, background: 'white' },
  })
    .composite(tiles)
    .png({ compressionLevel: 0 })
    .toBuffer();
  const jpeg = await sharp(whole)
    .extract({ left: 0, top: 0, width: 4000, height: 3000 })
    .jpeg({ quality: 88 })
    .toBuffer();
  const took: { readonly decode: number; readonly count: number }[] = [];
  let peak = 0;
  for (let round = 0; round < 6; round += 1) {
    const begun = performance.now();
    const picture = await decode(jpeg);
    const opened = performance.now();
    countWeave(picture);
    took.push({ decode: opened - begun, count: performance.now() - opened });
    peak = Math.max(peak, process.memoryUsage().rss);
  }
  const [first] = took;
  const decoding = quantile(
    took.map((one) => one.decode),
    0.5,
  );
  const counting = quantile(
    took.slice(1).map((one) => one.count),
    0.5,
  );
  console.log(
    `12 megapixels: decode ${decoding.toFixed(0)} ms, count ${counting.toFixed(0)} ms warm (${first?.count.toFixed(0)} ms first), together ${((decoding + counting) / decoding).toFixed(1)} times decoding; process memory ${(peak / 1e6).toFixed(0)} MB`,
  );
}

async function refusals(each: number): Promise<void> {
  console.log('\nnot a weave | refused | answered above 0.8');
  const tell = (name: string, results: readonly (number | null)[]): void =>
    console.log(
      `${name.padEnd(14)} | ${results.filter((one) => one === null).length}/${results.length} | ${results.filter((one) => one !== null && one >= 0.8).length}`,
    );
  const answer = async (picture: Parameters<typeof jpegOf>[0]): Promise<number | null> => {
    const counted = countWeave(await decode(await jpegOf(picture, 85)));
    return counted.ok ? Math.min(counted.value.weftwise.confidence, counted.value.warpwise.confidence) : null;
  };
  for (const kind of ['plain paper', 'pile side', 'screen'] as const) {
    const results: (number | null)[] = [];
    for (let seed = 0; seed < each; seed += 1)
      results.push(await answer(drawNotWoven(seeded(40_000 + seed), kind)));
    tell(kind, results);
  }
  for (const name of ['motion blur', 'out of focus'] as const) {
    const results: (number | null)[] = [];
    for (let seed = 0; seed < each; seed += 1) {
      const chance = seeded(45_000 + seed);
      const loom = drawLoomPicture(chance, 8);
      const reach = 3.5 * Math.max(loom.truth.knotPx, loom.truth.rowPx);
      const once = blurred(loom, reach * 0.7, reach * 0.7, chance, 3);
      results.push(
        await answer(name === 'motion blur' ? once : blurred(once, -reach * 0.7, reach * 0.7, chance, 3)),
      );
    }
    tell(name, results);
  }
}

/** Accuracy of the knot count on held-out loom pictures, its speed, and what it refuses: `weave [pictures]`. */
export async function run(args: readonly string[]): Promise<void> {
  const pictures = Number(args[0] ?? 500);
  const outcomes: Outcome[] = [];
  for (let seed = heldOut; seed < heldOut + pictures; seed += 1) outcomes.push(...(await countOne(seed)));
  console.log(`${pictures} loom pictures, seeds ${heldOut} to ${heldOut + pictures - 1}\n`);
  console.log(
    '                           |     n | accepted | within 5 % | within 2 % | median error of right | inside 95 % interval',
  );
  for (const axis of ['weftwise', 'warpwise'] as const)
    console.log(
      line(
        axis,
        outcomes.filter((one) => one.axis === axis),
      ),
    );
  const groups = [...new Set(outcomes.flatMap((one) => one.groups))].sort();
  for (const group of groups)
    console.log(
      line(
        group,
        outcomes.filter((one) => one.groups.includes(group)),
      ),
    );
  console.log('\nconfidence | n | within 5 %');
  for (const [low, high] of [
    [0.95, 1.01],
    [0.9, 0.95],
    [0.8, 0.9],
    [0.7, 0.8],
    [0.6, 0.7],
    [0, 0.6],
  ] as const) {
    const here = outcomes.filter((one) => one.accepted && one.confidence >= low && one.confidence < high);
    console.log(
      `${low} to ${Math.min(1, high)} | ${here.length} | ${percent(here.filter(({ off }) => off <= 0.05).length / here.length)}`,
    );
  }
  const sure = outcomes.filter((one) => one.accepted && one.confidence >= 0.8);
  console.log(
    `at 0.8 and above: ${sure.length} of ${outcomes.length} axes, ${percent(sure.filter(({ off }) => off > 0.05).length / sure.length)} wrong`,
  );
  const tapped = outcomes.filter(({ tappedOff }) => !Number.isNaN(tappedOff));
  console.log(
    `with taps: ${tapped.length} of ${outcomes.length} axes answered, ${tapped.filter(({ tappedOff }) => tappedOff > 0.2).length} factor errors, ${percent(tapped.filter(({ tappedOff }) => tappedOff <= 0.02).length / tapped.length)} within 2 %\n`,
  );
  await speed();
  await refusals(8);
}

await run(process.argv.slice(2));
