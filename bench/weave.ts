import { refusals } from './weave/refusals.ts';
import { countSeeds, runShare } from './weave/shares.ts';
import type { ShownKind } from './weave/shown.ts';
import { speed } from './weave/speed.ts';
import { accuracyTable, confidenceTable } from './weave/table.ts';

/** Seeds from here on were never looked at while the counter was made. */
const heldOut = { rug: 9000, cloth: 640_000 } as const;

/** The nearest published work; what it counts is narrower, so its figures and ours are not the same test. */
const published =
  'Beside it: thread counting on X-rays of canvas (Klein and others 2008; Johnson and others 2009, 2013) is checked against some 900 hand counts and called comparable to a person; it has one colour, a known range of densities and no factor of two to decide.';

async function accuracy(kind: ShownKind, count: number, keep: string | null): Promise<void> {
  const first = heldOut[kind];
  const outcomes = await countSeeds({ kind, first, count, keep });
  console.log(
    `\n${outcomes.length / 2} pictures of ${kind === 'rug' ? 'backs of rugs' : 'plain cloth'}, seeds ${first} to ${first + count - 1}\n`,
  );
  console.log(accuracyTable(outcomes));
  console.log(`\n${confidenceTable(outcomes)}`);
}

/**
 * Accuracy of the count on held-out pictures, its speed, and what it refuses: `weave [rugs] [cloths] [KEEP]`.
 * Two processes of low priority share the pictures; KEEP is a folder in which drawn pictures are kept for a next run.
 */
export async function run(args: readonly string[]): Promise<void> {
  if (await runShare(args)) return;
  const [rugs = '500', cloths = '100', keep = null] = args;
  await accuracy('rug', Number(rugs), keep);
  if (Number(cloths) > 0) await accuracy('cloth', Number(cloths), keep);
  console.log(`\n${published}`);
  await speed();
  await refusals(8);
}

await run(process.argv.slice(2));
