import sharp from 'sharp';
import { beforeAll, describe, expect, test } from 'vitest';
import { type BlotScene, drawBlotScene, statedBounds } from '../../bench/colourScene/blotScene.ts';
import { developScene, jpegOf } from '../../bench/colourScene/developScene.ts';
import { seeded } from '../../bench/loom/chance.ts';
import { zxingCodes } from '../../src/adapters/codes/zxingCodes.ts';
import { sharpPictures } from '../../src/adapters/images/sharpPictures.ts';
import { blotCommand } from '../../src/cli/blot.ts';
import { type CardPicture, readBlotPair, readCardBlot, stainingGrade } from '../../src/core/colour/index.ts';
import { type Grade, grades } from '../../src/core/wash/index.ts';
import { runOn } from '../support/runOn.ts';

interface Shown {
  readonly scene: BlotScene;
  readonly before: CardPicture;
  readonly after: CardPicture;
}

/** Small pictures: the codes of the card are only just large enough. */
const bounds = { ...statedBounds, longerPx: [900, 930] } as const;

async function shown(seed: number, choice = {}): Promise<Shown> {
  const scene = drawBlotScene(seeded(seed), { bounds, ...choice });
  const [before, after] = [
    await developScene(scene.before, scene.jpegQuality),
    await developScene(scene.after, scene.jpegQuality),
  ];
  if (typeof before === 'string' || typeof after === 'string') throw new Error(`${before} ${after}`);
  return { scene, before, after };
}

// The scenes draw reflectances, lamps, filters and a tone curve of their own; their truth is the ISO 105-A04 grade
// of the drawn colours. `npm run bench -- colour` judges many of them, and seeds never used for tuning.
describe('a blot in the card’s window', () => {
  let stained: Shown;
  let clean: Shown;
  beforeAll(async () => {
    stained = await shown(5);
    clean = await shown(1001, { unchanged: true });
  }, 60_000);

  test('is found and graded as it was drawn, from one picture and from two', () => {
    const { scene, before, after } = stained;
    const truth = stainingGrade(scene.clean, scene.stained);
    for (const read of [readCardBlot(after.picture, after.card), readBlotPair(before, after)]) {
      if (!read.ok) throw new Error(read.problem.code);
      const [lowest, highest] = read.value.gradeInterval.map((grade) => grades.indexOf(grade));
      expect(lowest).toBeLessThanOrEqual(grades.indexOf(truth.grade));
      expect(highest).toBeGreaterThanOrEqual(grades.indexOf(truth.grade));
      expect(Math.abs(grades.indexOf(read.value.grade) - grades.indexOf(truth.grade))).toBeLessThanOrEqual(1);
      expect(read.value.notes).not.toContain('no-blot-seen');
      expect(read.value.places.sample).toHaveLength(4);
    }
  });

  test('is graded on the command line from two photographs with the card', async () => {
    const { scene } = stained;
    const files = {
      'clean.jpg': await jpegOf(scene.before, scene.jpegQuality),
      'blotted.jpg': await jpegOf(scene.after, scene.jpegQuality),
    };
    const blot = blotCommand(sharpPictures, zxingCodes);
    const { code, said } = await runOn(files, blot, 'blot', 'clean.jpg', 'blotted.jpg', '--json');
    expect(code).toBe(0);
    const answer = JSON.parse(said);
    const [lowest, highest] = answer.gradeInterval.map((grade: Grade) => grades.indexOf(grade));
    const truth = grades.indexOf(stainingGrade(scene.clean, scene.stained).grade);
    expect(lowest).toBeLessThanOrEqual(truth);
    expect(highest).toBeGreaterThanOrEqual(truth);
    const swapped = await runOn(files, blot, 'blot', 'blotted.jpg', 'clean.jpg');
    expect(swapped.code).toBe(1);
    expect(swapped.complained).toContain('likely swapped');
    // Cut to its middle, the second picture lacks the card's codes.
    const { widthPx: width, heightPx: height } = scene.after;
    const [left, top] = [Math.round(width / 2) - 80, Math.round(height / 2) - 80];
    const cut = sharp(files['blotted.jpg']).extract({ left, top, width: 160, height: 160 });
    const cardless = { ...files, 'cut.jpg': await cut.jpeg().toBuffer() };
    for (const order of [
      ['clean.jpg', 'cut.jpg'],
      ['cut.jpg', 'clean.jpg'],
    ])
      expect((await runOn(cardless, blot, 'blot', ...order)).complained).toMatch(/^cut\.jpg: No weave card/);
  });

  test('that is none is never graded below 4-5 with more than 5 % probability', () => {
    const { before, after } = clean;
    for (const read of [readCardBlot(after.picture, after.card), readBlotPair(before, after)]) {
      if (!read.ok) throw new Error(read.problem.code);
      expect(read.value.notes).toContain('no-blot-seen');
      const below = Object.entries(read.value.probability).filter(
        ([grade]) => grades.indexOf(grade as never) < 7,
      );
      expect(below.reduce((sum, [, chance]) => sum + chance, 0)).toBeLessThanOrEqual(0.05);
    }
  });

  test('given before and after the wrong way round is refused, and so is cloth stained before', () => {
    const swapped = readBlotPair(stained.after, stained.before);
    expect(swapped.ok ? null : swapped.problem).toEqual({
      code: 'blot-before-stained',
      facts: { afterClean: true },
    });
    const twice = readBlotPair(stained.after, stained.after);
    expect(twice.ok ? null : twice.problem).toEqual({
      code: 'blot-before-stained',
      facts: { afterClean: false },
    });
  });

  test('under another card than before is refused', () => {
    const other = { ...stained.before, card: { ...stained.before.card, serial: 'QQQQQQ' } };
    const read = readBlotPair(other, stained.after);
    expect(read.ok ? 'accepted' : read.problem.code).toBe('blot-other-card');
  });

  test('shown outside the window is refused', () => {
    const { picture, card } = stained.after;
    const corner = { x: 2, y: 2, width: 30, height: 30 };
    const read = readCardBlot(picture, card, { control: corner, sample: { ...corner, x: 60 } });
    expect(read.ok ? 'accepted' : read.problem.code).toBe('blot-outside-window');
  });

  test('in burnt-out light, under a shadow across the card, or on coloured cloth is refused', () => {
    const { picture, card } = stained.after;
    const changed = (change: (value: number, x: number, band: number) => number) =>
      readCardBlot(
        {
          ...picture,
          data: picture.data.map((value, at) =>
            Math.min(255, Math.max(0, change(value, Math.floor(at / 3) % picture.widthPx, at % 3))),
          ),
        },
        card,
      );
    const code = (read: ReturnType<typeof changed>) => (read.ok ? 'accepted' : read.problem.code);
    expect(code(changed((value) => 1.7 * value))).toBe('blot-clipped');
    expect(code(changed((value, x) => (x > picture.widthPx / 2 ? 0.6 * value : value)))).toBe(
      'blot-light-uneven',
    );
  });
});
