import { describe, expect, test } from 'vitest';
import { normal, type Random, seededRandom } from '../drying/index.ts';
import { grades } from '../wash/index.ts';
import { colourDifference, stainingGrade } from './fastnessGrade.ts';
import { type LinearRgb, labFromLinear } from './lab.ts';
import { type BlotAreas, readBlot } from './readBlot.ts';

/** IEC 61966-2-1: light to a byte, written here on its own so that the scene does not use the code it tests. */
const byteOf = (light: number): number =>
  Math.max(
    0,
    Math.min(
      255,
      Math.round(
        255 * (light <= 0.0031308 ? 12.92 * light : 1.055 * Math.max(0, light) ** (1 / 2.4) - 0.055),
      ),
    ),
  );

interface Scene {
  readonly stain: LinearRgb;
  readonly lamp?: LinearRgb;
  /** Part of the light lost from the left edge to the right. */
  readonly fall?: number;
  readonly noise?: number;
  readonly threads?: number;
  readonly seed?: number;
}

const cloth: LinearRgb = [0.8, 0.79, 0.76];
const paper: LinearRgb = [0.86, 0.86, 0.86];
const areas: BlotAreas = {
  control: { x: 20, y: 40, width: 36, height: 36 },
  sample: { x: 84, y: 40, width: 36, height: 36 },
  whites: [
    { x: 0, y: 0, width: 20, height: 20 },
    { x: 120, y: 0, width: 20, height: 20 },
    { x: 0, y: 100, width: 20, height: 20 },
    { x: 120, y: 100, width: 20, height: 20 },
  ],
};

function picture(scene: Scene) {
  const { lamp = [0.9, 0.9, 0.9], fall = 0, noise = 0.004, threads = 0, seed = 1 } = scene;
  const random: Random = seededRandom(seed);
  const [widthPx, heightPx] = [140, 120];
  const data = new Uint8Array(widthPx * heightPx * 3);
  for (let y = 0; y < heightPx; y += 1)
    for (let x = 0; x < widthPx; x += 1) {
      const onPaper = (y < 22 || y >= 98) && (x < 22 || x >= 118);
      const inStain = x >= 76 && x < 128 && y >= 32 && y < 84;
      const thread = random() < threads;
      const surface = onPaper ? paper : inStain ? scene.stain : cloth;
      const light = 1 - (fall * x) / widthPx;
      for (const channel of [0, 1, 2] as const)
        data[(y * widthPx + x) * 3 + channel] = byteOf(
          (thread ? 0.05 : surface[channel]) * lamp[channel] * light + noise * normal(random),
        );
    }
  return { widthPx, heightPx, data };
}

const asPaper = (surface: LinearRgb) => {
  // The paper's L* 95 is Y = ((95 + 16) / 116)³ = 0.8762, ISO/CIE 11664-4.
  const level = 0.8762 / 0.86;
  return labFromLinear([surface[0] * level, surface[1] * level, surface[2] * level]);
};
const read = (scene: Scene, where: BlotAreas = areas) => {
  const found = readBlot(picture(scene), where);
  if (!found.ok) throw new Error(found.problem.code);
  return found.value;
};
const problem = (scene: Scene, where: Partial<BlotAreas> = {}) => {
  const found = readBlot(picture(scene), { ...areas, ...where });
  return found.ok ? 'accepted' : found.problem.code;
};

const stains: readonly LinearRgb[] = [
  ...([
    [0.76, 0.72, 0.69],
    [0.74, 0.6, 0.6],
    [0.7, 0.5, 0.5],
  ] as const),
  ...([
    [0.6, 0.66, 0.7],
    [0.7, 0.64, 0.45],
    [0.5, 0.2, 0.22],
  ] as const),
];

describe('a scene whose colours are known is graded as those colours are', () => {
  test.each([
    ['even white light', {}],
    ['warm light', { lamp: [0.95, 0.75, 0.5] }],
    ['cold light', { lamp: [0.65, 0.8, 0.93] }],
    ['light falling by a quarter across the picture', { fall: 0.25 }],
    ['dark threads on one pixel in ten', { threads: 0.1 }],
  ] as const)('in %s', (_name, light) => {
    for (const stain of stains) {
      const [clean, dyed] = [asPaper(cloth), asPaper(stain)];
      const found = read({ stain, ...light });
      expect(Math.abs(found.deltaE - colourDifference(clean, dyed))).toBeLessThan(0.6);
      const truth = grades.indexOf(stainingGrade(clean, dyed).grade);
      const [lowest, highest] = found.gradeInterval.map((grade) => grades.indexOf(grade));
      expect(lowest).toBeLessThanOrEqual(truth);
      expect(highest).toBeGreaterThanOrEqual(truth);
    }
  });

  test('the interval of 95 % holds the true grade in at least 95 of 100 noisy scenes', () => {
    const held = Array.from({ length: 100 }, (_, index) => {
      const random = seededRandom(9000 + index);
      const stain = cloth.map((value) => value * (1 - 0.5 * random())) as unknown as LinearRgb;
      const truth = grades.indexOf(stainingGrade(asPaper(cloth), asPaper(stain)).grade);
      const fall = 0.2 * random();
      const { gradeInterval } = read({ stain, fall, noise: 0.02, threads: 0.04, seed: 100 + index });
      const [lowest = 9, highest = -1] = gradeInterval.map((grade) => grades.indexOf(grade));
      return lowest <= truth && truth <= highest;
    });
    expect(held.filter(Boolean).length).toBeGreaterThanOrEqual(95);
  });

  test('cloth that took up nothing is never below 4-5 with more than 5 % probability', () => {
    for (let seed = 1; seed <= 30; seed += 1) {
      const { probability } = read({ stain: cloth, noise: 0.02, fall: 0.15, seed });
      const below = Object.entries(probability).filter(([grade]) => grade !== '5' && grade !== '4-5');
      expect(below.reduce((sum, [, chance]) => sum + chance, 0)).toBeLessThanOrEqual(0.05);
    }
  });

  test('the probabilities add up to one and more noise never makes the interval narrower', () => {
    const widths = [0.002, 0.02, 0.06].map((noise) => {
      const { probability, gradeInterval } = read({ stain: [0.7, 0.6, 0.6], noise });
      expect(Object.values(probability).reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1, 9);
      return grades.indexOf(gradeInterval[1]) - grades.indexOf(gradeInterval[0]);
    });
    expect(widths).toEqual(widths.toSorted((p, q) => p - q));
  });
});

describe('what cannot be graded is refused', () => {
  const stain: LinearRgb = [0.7, 0.6, 0.6];
  test.each([
    ['burnt-out light', problem({ stain, lamp: [1.3, 1.3, 1.3] }), 'blot-clipped'],
    [
      'light so low that the picture is black',
      problem({ stain, lamp: [0.001, 0.001, 0.001] }),
      'blot-clipped',
    ],
    [
      'a shadow on one white area',
      problem({ stain, fall: 0.3 }, { whites: areas.whites.slice(0, 2) }),
      'blot-light-uneven',
    ],
    ['light that falls by half', problem({ stain, fall: 0.6 }), 'blot-light-uneven'],
    [
      'an area beyond the edge',
      problem({ stain }, { sample: { x: 130, y: 40, width: 20, height: 20 } }),
      'blot-area-outside',
    ],
    [
      'half a pixel',
      problem({ stain }, { sample: { x: 84.5, y: 40, width: 20, height: 20 } }),
      'blot-area-outside',
    ],
    [
      'a handful of pixels',
      problem({ stain }, { sample: { x: 84, y: 40, width: 4, height: 4 } }),
      'blot-area-too-small',
    ],
    ['a sample on the control', problem({ stain }, { sample: areas.control }), 'blot-areas-overlap'],
    [
      'control and sample swapped',
      problem({ stain: [0.74, 0.7, 0.68] }, { control: areas.sample, sample: areas.control }),
      'blot-sample-lighter',
    ],
    [
      'coloured cloth for the control',
      problem({ stain: [0.5, 0.2, 0.2] }, { control: areas.sample, sample: areas.control }),
      'blot-cloth-not-white',
    ],
    [
      'a sample across the edge of the blot',
      problem({ stain: [0.5, 0.2, 0.2], noise: 0.001 }, { sample: { x: 61, y: 44, width: 25, height: 30 } }),
      'blot-area-mixed',
    ],
  ])('%s', (_name, code, expected) => {
    expect(code).toBe(expected);
  });
});
