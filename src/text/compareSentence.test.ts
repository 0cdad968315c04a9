import { expect, test } from 'vitest';
import { compareSentence } from './colourWords.ts';

const colour = {} as Parameters<typeof compareSentence>[0]['colours'][number];
const said = (
  lightness: readonly [number, number],
  chroma: readonly [number, number],
  hueMoved: readonly string[] = [],
) =>
  compareSentence({
    lightness: { by: lightness[0], half95: lightness[1] },
    chroma: { by: chroma[0], half95: chroma[1] },
    colours: [colour],
    hueMoved,
  });

test('the client is told no change that measurement could hide', () => {
  expect(said([4.2, 1], [0, 1])).toBe(
    'Lighter and cleaner: lightness up 4 ± 1; hues unchanged within measurement.',
  );
  expect(said([0.6, 1.1], [0, 1])).toBe(
    'Much as before: lightness unchanged within measurement; hues unchanged within measurement.',
  );
  expect(said([0.6, 1.1], [3, 1])).toContain('colourfulness up 3 ± 1');
  expect(said([-4, 1], [0, 1])).toMatch(/^Darker: lightness down 4 ± 1/);
});

test('where a hue moved it is named, and nothing is called cleaner', () => {
  expect(said([4, 1], [0, 1], ['red'])).toMatch(/^Lighter: lightness up 4 ± 1; the hue moved in red/);
});
