import { countWeave } from '../../src/core/weave/index.ts';
import { drawLoomPicture, seeded } from '../loom/index.ts';
import { blurred, drawNotWoven } from '../loom/notWoven.ts';
import { throughJpeg } from './shown.ts';

/** What is no weave, or no longer one: how often it is refused, and how often it is answered firmly. */
export async function refusals(each: number): Promise<void> {
  console.log('\nnot a weave | refused | answered above 0.8');
  const tell = (name: string, results: readonly (number | null)[]): void =>
    console.log(
      `${name.padEnd(14)} | ${results.filter((one) => one === null).length}/${results.length} | ${results.filter((one) => one !== null && one >= 0.8).length}`,
    );
  const answer = async (picture: Parameters<typeof throughJpeg>[0]): Promise<number | null> => {
    const counted = countWeave(await throughJpeg(picture, 85));
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
