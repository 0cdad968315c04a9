import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import Color from 'colorjs.io';
import { converter, differenceCiede2000 } from 'culori';
import {
  type CardBlot,
  type ColourProblem,
  ciede2000,
  fillDifference,
  labFromSrgb,
  readBlotPair,
  readCardBlot,
  stainingGrade,
} from '../src/core/colour/index.ts';
import { grades } from '../src/core/wash/index.ts';
import type { Result } from '../src/units/index.ts';
import { drawBlotScene, type SceneChoice } from './colourScene/blotScene.ts';
import { developScene } from './colourScene/developScene.ts';
import { seeded } from './loom/chance.ts';

/** Seeds below were looked at while the limits were set; seeds from here on never. */
const heldOut = 50_000;

interface Outcome {
  readonly refusal: string | null;
  readonly halfSteps: number;
  readonly ratingOff: number;
  readonly held: boolean;
  readonly width: number;
  readonly below: number;
}

const refusedWith = (refusal: string): Outcome => ({
  ...{ refusal, halfSteps: Number.NaN, ratingOff: Number.NaN, held: false, width: Number.NaN, below: 0 },
});

const bounded = (rating: number): number => Math.min(5, Math.max(1, rating));

function judge(read: Result<CardBlot, ColourProblem>, truth: ReturnType<typeof stainingGrade>): Outcome {
  if (!read.ok) return refusedWith(read.problem.code);
  const { grade, gradeInterval, probability, control, dye } = read.value;
  const [lowest = -1, highest = 99] = gradeInterval.map((one) => grades.indexOf(one));
  const at = grades.indexOf(truth.grade);
  return {
    refusal: null,
    halfSteps: Math.abs(grades.indexOf(grade) - at),
    ratingOff: Math.abs(bounded(stainingGrade(control, dye).rating) - bounded(truth.rating)),
    held: lowest <= at && at <= highest,
    width: (highest - lowest) / 2,
    below: grades.slice(0, grades.indexOf('4-5')).reduce((sum, one) => sum + (probability[one] ?? 0), 0),
  };
}

async function readScene(seed: number, choice: SceneChoice): Promise<readonly [Outcome, Outcome]> {
  const scene = drawBlotScene(seeded(seed), choice);
  const before = await developScene(scene.before, scene.jpegQuality);
  const after = await developScene(scene.after, scene.jpegQuality);
  const truth = stainingGrade(scene.clean, scene.stained);
  return [
    typeof after === 'string' ? refusedWith(after) : judge(readCardBlot(after.picture, after.card), truth),
    typeof after === 'string' || typeof before === 'string'
      ? refusedWith(String(typeof after === 'string' ? after : before))
      : judge(readBlotPair(before, after), truth),
  ];
}

const quantile = (values: readonly number[], share: number): number =>
  values.toSorted((p, q) => p - q)[Math.min(values.length - 1, Math.floor(share * values.length))] ??
  Number.NaN;

function tell(name: string, outcomes: readonly Outcome[]): void {
  const taken = outcomes.filter(({ refusal }) => refusal === null);
  const share = (count: number, of: number): string => `${((100 * count) / Math.max(1, of)).toFixed(1)} %`;
  const refusals = new Map<string, number>();
  for (const { refusal } of outcomes)
    if (refusal !== null) refusals.set(refusal, (refusals.get(refusal) ?? 0) + 1);
  const of = (pick: (one: Outcome) => number): readonly number[] => taken.map(pick);
  console.log(
    [
      name.padEnd(34),
      share(taken.length, outcomes.length),
      (
        quantile(
          of(({ halfSteps }) => halfSteps),
          0.5,
        ) / 2
      ).toFixed(2),
      quantile(
        of(({ ratingOff }) => ratingOff),
        0.5,
      ).toFixed(3),
      quantile(
        of(({ ratingOff }) => ratingOff),
        0.95,
      ).toFixed(3),
      share(taken.filter(({ halfSteps }) => halfSteps <= 1).length, taken.length),
      share(taken.filter(({ held }) => held).length, taken.length),
      (taken.reduce((sum, { width }) => sum + width, 0) / taken.length).toFixed(2),
      taken.filter(({ below }) => below > 0.05).length,
      [...refusals].map(([code, count]) => `${code} ${count}`).join(', '),
    ].join(' | '),
  );
}

/** Blots of known colour, drawn by a spectral scene that shares nothing with the reader. */
async function proof(each: number): Promise<void> {
  console.log(
    'scenes | accepted | median grade off | median rating off | 95 % rating off | within ½ grade | interval 95 % holds | mean width | below 4-5 above 5 % | refusals',
  );
  for (const [name, first, choice] of [
    ['tuning seeds', 1, {}],
    ['held out', heldOut, {}],
    ['held out, cloth unchanged', heldOut + 20_000, { unchanged: true }],
    ['held out, another card after', heldOut + 40_000, { otherCard: true }],
  ] as const) {
    const read: (readonly [Outcome, Outcome])[] = [];
    const count = 'otherCard' in choice ? Math.ceil(each / 5) : each;
    for (let seed = first; seed < first + count; seed += 1) read.push(await readScene(seed, choice));
    tell(
      `${name}, one picture`,
      read.map(([one]) => one),
    );
    tell(
      `${name}, before and after`,
      read.map(([, pair]) => pair),
    );
  }
}

interface Share {
  readonly before: SharedArrayBuffer;
  readonly after: SharedArrayBuffer;
  readonly into: SharedArrayBuffer;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Waits for bands of rows, fills them, says so. */
function work(share: Share): void {
  const { widthPx, heightPx } = share;
  const of = (buffer: SharedArrayBuffer) => ({ widthPx, heightPx, data: new Uint8Array(buffer) });
  const [before, after, into] = [of(share.before), of(share.after), new Float32Array(share.into)];
  parentPort?.on('message', ([from, until]: readonly [number, number]) => {
    fillDifference(before, after, into, from, until);
    parentPort?.postMessage(0);
  });
}

/** A picture with grain and its change, as after a wash. */
function pictures(widthPx: number, heightPx: number): Share {
  const pixels = widthPx * heightPx;
  const share = {
    ...{
      widthPx,
      heightPx,
      before: new SharedArrayBuffer(3 * pixels),
      after: new SharedArrayBuffer(3 * pixels),
    },
    into: new SharedArrayBuffer(4 * pixels),
  };
  const [one, other] = [new Uint8Array(share.before), new Uint8Array(share.after)];
  const chance = seeded(7);
  for (let at = 0; at < one.length; at += 1) {
    one[at] = 30 + 190 * chance();
    other[at] = (one[at] ?? 0) + 24 * chance();
  }
  return share;
}

async function timed(share: Share, workers: readonly Worker[]): Promise<number> {
  const begun = performance.now();
  await Promise.all(
    workers.map((worker, index) => {
      const row = (part: number): number => Math.round((share.heightPx * part) / workers.length);
      return new Promise((done) => {
        worker.once('message', done);
        worker.postMessage([row(index), row(index + 1)]);
      });
    }),
  );
  return performance.now() - begun;
}

/** Processor time of this process so far [ms]; a busy machine does not stretch it as it does the clock. */
const processorMs = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

const nanosecondsEach = (pixels: number, run: () => void): number => {
  run();
  const begun = processorMs();
  run();
  return ((processorMs() - begun) * 1e6) / pixels;
};

async function speed(): Promise<void> {
  console.log(
    '\nmap of ΔE00 | cores | first ms | median ms | limit ms | processor ms of both cores together',
  );
  for (const [name, widthPx, heightPx, limit] of [
    ['12 megapixels', 4000, 3000, 2000],
    ['2 megapixels', 1600, 1250, 300],
  ] as const) {
    const share = pictures(widthPx, heightPx);
    const workers = [0, 1].map(() => new Worker(new URL(import.meta.url), { workerData: share }));
    const took: number[] = [];
    const begun = processorMs();
    for (let round = 0; round < 7; round += 1) took.push(await timed(share, workers));
    const worked = (processorMs() - begun) / took.length;
    console.log(
      `${name} | 2 | ${took[0]?.toFixed(0)} | ${quantile(took, 0.5).toFixed(0)} | ${limit} | ${worked.toFixed(0)}`,
    );
    await Promise.all(workers.map((worker) => worker.terminate()));
  }
  console.log(`process memory ${(process.memoryUsage().rss / 1e6).toFixed(0)} MB`);

  const share = pictures(400, 300);
  const [one, other] = [new Uint8Array(share.before), new Uint8Array(share.after)];
  const pixels = share.widthPx * share.heightPx;
  const into = new Float32Array(share.into);
  const size = { widthPx: share.widthPx, heightPx: share.heightPx };
  const toLab = converter('lab65');
  const difference = differenceCiede2000();
  const rgb = (data: Uint8Array, at: number) =>
    [data[at] ?? 0, data[at + 1] ?? 0, data[at + 2] ?? 0] as const;
  const each = (of: (at: number) => number) => (): void => {
    for (let pixel = 0; pixel < pixels; pixel += 1) into[pixel] = of(3 * pixel);
  };
  const culoriLab = (data: Uint8Array, at: number) => {
    const [r, g, b] = rgb(data, at);
    return toLab({ mode: 'rgb', r: r / 255, g: g / 255, b: b / 255 });
  };
  const colorOf = (data: Uint8Array, at: number) => {
    const [r, g, b] = rgb(data, at);
    return new Color('srgb', [r / 255, g / 255, b / 255]);
  };
  const ours = nanosecondsEach(20 * pixels, () => {
    for (let round = 0; round < 20; round += 1)
      fillDifference({ ...size, data: one }, { ...size, data: other }, into, 0, size.heightPx);
  });
  const fast = into.slice();
  const exact = nanosecondsEach(
    pixels,
    each((at) => ciede2000(labFromSrgb(rgb(one, at)), labFromSrgb(rgb(other, at)))),
  );
  const error = fast.reduce((most, value, at) => Math.max(most, Math.abs(value - (into[at] ?? 0))), 0);
  const culori = nanosecondsEach(
    pixels,
    each((at) => difference(culoriLab(one, at), culoriLab(other, at))),
  );
  const colorjs = nanosecondsEach(
    pixels,
    each((at) => colorOf(one, at).deltaE(colorOf(other, at), '2000')),
  );
  console.log('\nfrom sRGB pixels to ΔE00, one core | ns of processor time a pixel | times the fast map');
  for (const [name, took] of [
    ['fast map', ours],
    ['exact, here', exact],
    ['culori', culori],
    ['colorjs.io', colorjs],
  ] as const)
    console.log(`${name} | ${took.toFixed(0)} | ${(took / ours).toFixed(1)}`);
  console.log(`largest error of the fast map here: ${error.toFixed(4)} (limit 0.02)`);
}

/** Grades of drawn blots and the speed of the map: `colour [scenes per row]`; 0 leaves the scenes out. */
export async function run(args: readonly string[]): Promise<void> {
  const each = Number(args[0] ?? 60);
  if (each > 0) await proof(each);
  await speed();
}

if (isMainThread) await run(process.argv.slice(2));
else work(workerData as Share);
