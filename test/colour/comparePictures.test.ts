import { beforeAll, describe, expect, test } from 'vitest';
import { developScene } from '../../bench/colourScene/developScene.ts';
import { drawRugScene, type RugChoice, type RugScene } from '../../bench/colourScene/rugScene.ts';
import { seeded } from '../../bench/loom/chance.ts';
import {
  type CompareSide,
  colourChangeGrade,
  comparePictures,
  drawDifferenceMap,
} from '../../src/core/colour/index.ts';
import { grades } from '../../src/core/wash/index.ts';
import { compareSentence } from '../../src/text/colourWords.ts';

interface Shown {
  readonly scene: RugScene;
  readonly before: CompareSide;
  readonly after: CompareSide;
}

async function shown(seed: number, choice: RugChoice): Promise<Shown> {
  const scene = drawRugScene(seeded(seed), choice);
  const [before, after] = [await developScene(scene.before, 90), await developScene(scene.after, 90)];
  if (typeof before === 'string' || typeof after === 'string') throw new Error(`${before} ${after}`);
  return {
    scene,
    before: { ...before, corners: scene.beforeCorners },
    after: { ...after, corners: scene.afterCorners },
  };
}

const compare = ({ scene, before, after }: Shown) => comparePictures(before, after, scene.colours);

describe('a rug photographed before and after a wash, in another light, from another place, the card moved', () => {
  let faded: Shown;
  beforeAll(async () => {
    faded = await shown(102, { soil: 0.15, faded: 'red' });
  }, 60_000);

  test('lies on itself, and each colour’s interval holds its true grade (ISO 105-A05 of the drawn colours)', () => {
    const compared = compare(faded);
    if (!compared.ok) throw new Error(compared.problem.code);
    const { alignment, colours, hueMoved, lightness, map, control } = compared.value;
    expect(alignment.likeness).toBeGreaterThan(0.7);
    expect(control.deltaE).toBeLessThan(1.5);
    expect(colours.length).toBeGreaterThanOrEqual(3);
    for (const { name, gradeInterval } of colours) {
      const truth = faded.scene.colours.find((colour) => colour.name === name);
      if (truth === undefined) throw new Error(name);
      const grade = grades.indexOf(colourChangeGrade(truth.before, truth.after).grade);
      const [lowest, highest] = gradeInterval.map((one) => grades.indexOf(one));
      expect(lowest).toBeLessThanOrEqual(grade);
      expect(highest).toBeGreaterThanOrEqual(grade);
    }
    expect(hueMoved).toEqual(['red']);
    expect(lightness.by).toBeGreaterThan(lightness.half95);
    expect(compareSentence(compared.value)).toMatch(/^Lighter: lightness up .* the hue moved in red/);
    expect(drawDifferenceMap(map).heightPx).toBeGreaterThan(map.heightPx);
  });

  test('shown the wrong way round is said to be possibly swapped', () => {
    const { scene, before, after } = faded;
    const compared = comparePictures(after, before, []);
    if (!compared.ok) throw new Error(compared.problem.code);
    expect(compared.value.notes).toContain('maybe-swapped');
    expect(scene.colours.length).toBeGreaterThan(0);
  });

  test('with corners tapped in another order is refused', () => {
    const [a, b, c, d] = faded.scene.afterCorners;
    const compared = comparePictures(faded.before, { ...faded.after, corners: [c, d, a, b] }, []);
    expect(compared.ok ? 'accepted' : compared.problem.code).toBe('compare-other-rug');
  });

  test('without corners is laid on itself by the card and then its pattern, though the card moved by 3 cm', () => {
    const bare = ({ picture, card }: CompareSide): CompareSide => ({ picture, card });
    const compared = comparePictures(bare(faded.before), bare(faded.after), []);
    if (!compared.ok) throw new Error(compared.problem.code);
    expect(compared.value.alignment.from).toBe('card');
    expect(compared.value.alignment.likeness).toBeGreaterThan(0.7);
  });

  test('a place too small, outside or under the card is named, not guessed', () => {
    const compared = comparePictures(faded.before, faded.after, [
      { name: 'speck', area: { x: 300, y: 300, width: 4, height: 4 } },
      { name: 'far out', area: { x: 5000, y: 300, width: 60, height: 60 } },
      { name: 'card', area: { x: 1150, y: 780, width: 60, height: 60 } },
    ]);
    if (!compared.ok) throw new Error(compared.problem.code);
    expect(compared.value.unmeasured.map(({ why }) => why)).toEqual([
      'too-small',
      'not-in-both',
      'not-in-both',
    ]);
  });
});

test('another rug of the same size is refused', async () => {
  const compared = compare(await shown(103, { soil: 0.1, otherRug: true }));
  expect(compared.ok ? 'accepted' : compared.problem.code).toBe('compare-other-rug');
});
