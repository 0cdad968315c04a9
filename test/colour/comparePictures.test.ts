import { beforeAll, describe, expect, test } from 'vitest';
import { developScene, jpegOf } from '../../bench/colourScene/developScene.ts';
import { drawRugScene, type RugChoice, type RugScene } from '../../bench/colourScene/rugScene.ts';
import { seeded } from '../../bench/loom/chance.ts';
import { zxingCodes } from '../../src/adapters/codes/zxingCodes.ts';
import { sharpPictures } from '../../src/adapters/images/sharpPictures.ts';
import { compareCommand } from '../../src/cli/compare.ts';
import {
  type ColourRow,
  type CompareSide,
  colourChangeGrade,
  comparePictures,
  drawDifferenceMap,
} from '../../src/core/colour/index.ts';
import { grades } from '../../src/core/wash/index.ts';
import { compareSentence } from '../../src/text/colourWords.ts';
import { runOn } from '../support/runOn.ts';

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

/** Each interval holds the ISO 105-A05 grade of the drawn colours. */
function holdTheirGrades(scene: RugScene, rows: readonly ColourRow[]): void {
  expect(rows.length).toBeGreaterThanOrEqual(3);
  for (const { name, gradeInterval } of rows) {
    const truth = scene.colours.find((colour) => colour.name === name);
    if (truth === undefined) throw new Error(name);
    const grade = grades.indexOf(colourChangeGrade(truth.before, truth.after).grade);
    const [lowest, highest] = gradeInterval.map((one) => grades.indexOf(one));
    expect(lowest).toBeLessThanOrEqual(grade);
    expect(highest).toBeGreaterThanOrEqual(grade);
  }
}

const compare = ({ scene, before, after }: Shown) => comparePictures(before, after, scene.colours);

describe('a rug of 70 cm before and after a wash, loose pieces of the card beside its corners, in another light', () => {
  let faded: Shown;
  beforeAll(async () => {
    faded = await shown(104, { soil: 0.15, faded: 'red', loose: true });
  }, 60_000);

  test('lies on itself, and each colour’s interval holds its true grade (ISO 105-A05 of the drawn colours)', () => {
    const compared = compare(faded);
    if (!compared.ok) throw new Error(compared.problem.code);
    const { alignment, colours, hueMoved, lightness, map, control, notes } = compared.value;
    expect(alignment.likeness).toBeGreaterThan(0.7);
    expect(control.deltaE).toBeLessThan(1.5);
    holdTheirGrades(faded.scene, colours);
    expect(hueMoved).toEqual(['red']);
    expect(lightness.by).toBeGreaterThan(lightness.half95);
    expect(compareSentence(compared.value)).toMatch(/^Lighter: lightness up .* the hue moved in red/);
    expect(notes).not.toContain('light-known-at-card');
    expect(drawDifferenceMap(map).heightPx).toBeGreaterThan(map.heightPx);
  });

  test('shown the wrong way round is said to be possibly swapped, and a place too small or outside is not guessed', () => {
    const compared = comparePictures(faded.after, faded.before, [
      { name: 'speck', area: { x: 300, y: 300, width: 4, height: 4 } },
      { name: 'far out', area: { x: 5000, y: 300, width: 60, height: 60 } },
    ]);
    if (!compared.ok) throw new Error(compared.problem.code);
    expect(compared.value.notes).toContain('maybe-swapped');
    expect(compared.value.unmeasured.map(({ why }) => why)).toEqual(['too-small', 'not-in-both']);
  });

  test('is compared on the command line, with a map', async () => {
    const { scene } = faded;
    const files = {
      'before.jpg': await jpegOf(scene.before, 90),
      'after.jpg': await jpegOf(scene.after, 90),
    };
    const corners = [scene.beforeCorners, scene.afterCorners].map((four) => four.flat().join(',')).join(':');
    const colours = scene.colours.flatMap(({ name, area: { x, y, width, height } }) => [
      '--colour',
      `${name}=${x},${y},${width},${height}`,
    ]);
    const { code, said, written } = await runOn(
      files,
      compareCommand(sharpPictures, zxingCodes),
      ...[
        'compare',
        'before.jpg',
        'after.jpg',
        '--corners',
        corners,
        ...colours,
        '--map',
        'map.png',
        '--json',
      ],
    );
    expect(code).toBe(0);
    const answer = JSON.parse(said);
    expect(Object.keys(answer)).toEqual([
      ...['lightness', 'chroma', 'colours', 'unmeasured', 'hueMoved', 'middleDeltaE', 'control', 'alignment'],
      ...['sameCard', 'sentence', 'notes'],
    ]);
    expect(answer.sameCard).toBe(true);
    expect(answer.hueMoved).toEqual(['red']);
    holdTheirGrades(scene, answer.colours);
    // Every PNG begins with this signature (ISO/IEC 15948).
    expect([...(written.get('map.png') ?? [])].slice(1, 4)).toEqual([0x50, 0x4e, 0x47]);
  });

  test('on the command line the picture that lacks the card is named, whichever it is', async () => {
    const { widthPx, heightPx } = faded.scene.before;
    const bare = { data: new Uint8Array(3 * widthPx * heightPx).fill(150), widthPx, heightPx } as const;
    const files = {
      'carded.jpg': await jpegOf(faded.scene.before, 90),
      'bare.jpg': await jpegOf({ ...faded.scene.before, ...bare }, 90),
    };
    const command = compareCommand(sharpPictures, zxingCodes);
    for (const order of [
      ['carded.jpg', 'bare.jpg'],
      ['bare.jpg', 'carded.jpg'],
    ]) {
      const { code, complained } = await runOn(files, command, 'compare', ...order);
      expect([code, complained]).toEqual([1, expect.stringMatching(/^bare\.jpg: No weave card was found/)]);
      const { refused } = JSON.parse((await runOn(files, command, 'compare', ...order, '--json')).said);
      expect([refused.code, refused.file]).toEqual(['card-not-found', 'bare.jpg']);
    }
  });

  test('with corners tapped in another order is refused', () => {
    const [a, b, c, d] = faded.scene.afterCorners;
    const compared = comparePictures(faded.before, { ...faded.after, corners: [c, d, a, b] }, []);
    expect(compared.ok ? 'accepted' : compared.problem.code).toBe('compare-other-rug');
  });

  test('under greys that shine on one piece and lie in shadow on another is refused', () => {
    const { picture, card, corners } = faded.after;
    const lit = { A: 1.25, B: 0.75, C: 1, D: 1 };
    const patches = card.patches.map((patch) => {
      const share =
        patch.printed === 255 ? 1 : (Object.entries(lit).find(([side]) => side === patch.side)?.[1] ?? 1);
      return { ...patch, red: share * patch.red, green: share * patch.green, blue: share * patch.blue };
    });
    const compared = comparePictures(
      faded.before,
      { picture, card: { ...card, patches }, ...(corners === undefined ? {} : { corners }) },
      [],
    );
    expect(compared.ok ? 'accepted' : compared.problem.code).toBe('compare-control-moved');
  });

  test('without its corners tapped is refused, since pieces are laid by hand', () => {
    const bare = ({ picture, card }: CompareSide): CompareSide => ({ picture, card });
    const compared = comparePictures(bare(faded.before), bare(faded.after), []);
    expect(compared.ok ? 'accepted' : compared.problem.code).toBe('compare-corners');
  });

  test('with corners that hold nothing both pictures show is refused, not called unchanged', () => {
    const outside = [
      [-500, -500],
      [-300, -500],
      [-300, -300],
      [-500, -300],
    ] as const satisfies CompareSide['corners'];
    const compared = comparePictures(
      { ...faded.before, corners: outside },
      { ...faded.after, corners: outside },
      [],
    );
    expect(compared.ok ? 'accepted' : compared.problem.code).toBe('compare-corners');
  });

  test('with only two pieces seen is refused: two tell no fall of the light', () => {
    const { picture, card } = faded.after;
    const patches = card.patches.filter(({ side }) => side === 'A' || side === 'B');
    const compared = comparePictures(
      faded.before,
      { ...faded.after, picture, card: { ...card, patches } },
      [],
    );
    expect(compared.ok ? null : compared.problem.facts).toEqual({
      picture: 'after',
      because: 'blot-card-cut-off',
    });
  });
});

test('a small rug with the card lying on it is laid on itself by the card and its pattern, though the card moved by 3 cm', async () => {
  const { scene, before, after } = await shown(102, { soil: 0.15, faded: 'red' });
  const bare = ({ picture, card }: CompareSide): CompareSide => ({ picture, card });
  const card = { name: 'card', area: { x: 825, y: 560, width: 42, height: 42 } };
  const compared = comparePictures(bare(before), bare(after), [...scene.colours, card]);
  if (!compared.ok) throw new Error(compared.problem.code);
  const { alignment, colours, hueMoved, notes, unmeasured } = compared.value;
  expect(alignment.from).toBe('card');
  expect(alignment.likeness).toBeGreaterThan(0.7);
  holdTheirGrades(scene, colours);
  expect(hueMoved).toEqual(['red']);
  expect(notes).toContain('light-known-at-card');
  expect(unmeasured).toEqual([{ name: 'card', why: 'not-in-both' }]);
});

test('another rug of the same size is refused', async () => {
  const compared = compare(await shown(103, { soil: 0.1, otherRug: true, loose: true }));
  expect(compared.ok ? 'accepted' : compared.problem.code).toBe('compare-other-rug');
});
