import { writeFile } from 'node:fs/promises';
import type { Axis } from '../src/core/weave/candidate.ts';
import type { Picture } from '../src/core/weave/index.ts';
import { evidenceRows } from '../src/core/weave/judge.ts';
import { distinctMeasured } from '../src/core/weave/likely.ts';
import { candidatesAlong, mostDeg, survey } from '../src/core/weave/survey.ts';
import { drawLoomPicture, seeded } from './loom/index.ts';
import { drawNotWoven, outOfFocus } from './loom/notWoven.ts';
import { fitNetwork, type Group } from './weave/fitNetwork.ts';
import { type ShownKind, shownPicture, throughJpeg } from './weave/shown.ts';

const axes = ['weftwise', 'warpwise'] as const;

const surveyOf = (picture: Picture) =>
  survey(picture, { x: 0, y: 0, width: picture.width, height: picture.height }, mostDeg);

const isFair = (fair: readonly number[], pitchPx: number, most: number): boolean =>
  fair.some((pitch) => Math.abs(Math.log(pitchPx / pitch)) < most);

/** Every candidate of a picture, for the judge; axes on which nothing is right teach it nothing. */
function judgeGroups(picture: Picture, fair: Readonly<Record<Axis, readonly number[]>>): readonly Group[] {
  const seen = surveyOf(picture);
  return axes.flatMap((axis) => {
    const candidates = candidatesAlong(seen, axis);
    const right = candidates.map(({ pitchPx }) => isFair(fair[axis], pitchPx, 0.06));
    return right.includes(true)
      ? [{ rows: evidenceRows(candidates.map(({ evidence }) => evidence)), right }]
      : [];
  });
}

/** The measured candidates of a picture, to tell how likely each is; here it may be none. */
function likelyGroups(picture: Picture, fair: Readonly<Record<Axis, readonly number[]>>): readonly Group[] {
  const seen = surveyOf(picture);
  return axes.flatMap((axis) => {
    const measured = distinctMeasured(seen, axis);
    return measured.length === 0
      ? []
      : [
          {
            rows: measured.map(({ signs }) => signs),
            right: measured.map(({ pitchPx }) => isFair(fair[axis], pitchPx, 0.05)),
          },
        ];
  });
}

/** What is no weave: paper, pile, a screen, and backs out of focus. */
async function nothingToCount(seed: number): Promise<Picture> {
  const chance = seeded(seed);
  const kind = (['plain paper', 'pile side', 'screen'] as const)[seed % 4];
  return throughJpeg(
    kind === undefined ? outOfFocus(chance, drawLoomPicture(chance, 8)) : drawNotWoven(chance, kind),
    85,
  );
}

interface Teaching {
  readonly kind: ShownKind | 'nothing';
  readonly first: number;
  readonly count: number;
}

/** Seeds each is fitted to; the likelihoods are fitted to pictures the judge has not seen, the bench counts others still. */
const teaching = {
  judge: [
    { kind: 'rug', first: 1000, count: 420 },
    { kind: 'rug', first: 5000, count: 387 },
  ],
  likely: [
    { kind: 'rug', first: 20_000, count: 400 },
    { kind: 'rug', first: 30_000, count: 344 },
    { kind: 'cloth', first: 600_000, count: 127 },
    { kind: 'cloth', first: 620_000, count: 100 },
    { kind: 'nothing', first: 800_000, count: 107 },
  ],
} as const satisfies Record<string, readonly Teaching[]>;

const shapes = {
  judge: { units: 6, networks: 1, restraint: 5, rounds: 300, none: false },
  likely: { units: 4, networks: 4, restraint: 2, rounds: 250, none: true },
} as const;

const titles = {
  judge: 'Weights of the judge that tells the visible repeat from its multiples and parts',
  likely: 'How likely a measured repeat is the one the eye counts',
} as const;

/**
 * Fits the counter's two networks anew: `weaveJudge judge|likely [OUT.json] [KEEP]`; without a file only a
 * few pictures, to try. First the judge, then, with the judge's file in place, the likelihoods.
 */
export async function run(args: readonly string[]): Promise<void> {
  const [which = 'likely', out, keep = null] = args;
  if (which !== 'judge' && which !== 'likely') throw new Error('say judge or likely');
  const groups: Group[] = [];
  for (const { kind, first, count } of teaching[which])
    for (let seed = first; seed < first + (out === undefined ? 6 : count); seed += 1) {
      const nothing = kind === 'nothing';
      const { picture, fair } = nothing
        ? { picture: await nothingToCount(seed), fair: { weftwise: [], warpwise: [] } }
        : await shownPicture(kind, seed, keep).then((one) => ({
            picture: one.picture,
            fair: one.shown.fair,
          }));
      groups.push(...(which === 'judge' ? judgeGroups : likelyGroups)(picture, fair));
    }
  const shape = shapes[which];
  const seeds = teaching[which].map(
    ({ kind, first, count }) =>
      `${count} of ${kind === 'nothing' ? 'what is no weave' : kind === 'rug' ? 'backs of rugs' : 'plain cloth'} (seeds ${first} to ${first + count - 1})`,
  );
  const fitted = {
    title: titles[which],
    source: 'workshop-setting',
    where: `fitted to rendered pictures: ${seeds.join(', ')}; bench/weaveJudge.ts fits anew`,
    readFrom: 'our own fit',
    unit: 'none',
    ...fitNetwork(groups, out === undefined ? { ...shape, rounds: 20 } : shape),
  };
  if (out !== undefined) await writeFile(out, `${JSON.stringify(fitted)}\n`);
  console.log(`${groups.length} axes, weights ${out === undefined ? 'not kept' : `in ${out}`}`);
}

await run(process.argv.slice(2));
