import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { zxingCodes } from '../adapters/codes/zxingCodes.ts';
import { sharpPictures } from '../adapters/images/sharpPictures.ts';
import { blotCommand } from './blot.ts';
import { runCli } from './runCli.ts';

const example = join(import.meta.dirname, '../../examples/colour/blot.png');
const control = ['--control', '90,110,80,80'];
const sample = ['--sample', '260,125,50,50'];
const whites = ['10,10,50,40', '360,10,50,40', '10,250,50,40', '360,250,50,40'].flatMap((at) => [
  '--white',
  at,
]);

async function blot(...args: readonly string[]) {
  const said: string[] = [];
  const complained: string[] = [];
  const code = await runCli([blotCommand(sharpPictures, zxingCodes)], ['blot', ...args], {
    print: (text) => said.push(text),
    complain: (text) => complained.push(text),
    readBytes: (path) => readFile(path),
    writeBytes: async () => {},
  });
  return { code, said: said.join('\n'), complained: complained.join('\n') };
}

describe('the worked blot', () => {
  // The example is drawn: cloth 0.80, 0.79, 0.76 and stain 0.74, 0.59, 0.57 of the light, paper 0.86, in uneven warm light.
  // By ISO 105-A04 those colours differ by ΔE_GS 8.22 (grade 3), worked apart from this code.
  test('is graded as it was drawn, and says how sure that is', async () => {
    const { code, said } = await blot(example, ...control, ...sample, ...whites, '--json');
    expect(code).toBe(0);
    const answer = JSON.parse(said);
    expect(Object.keys(answer)).toEqual([
      ...['deltaE', 'deltaEGS', 'grade', 'gradeInterval', 'probability', 'sigma', 'control', 'dye', 'notes'],
    ]);
    expect(Math.abs(answer.deltaEGS - 8.22)).toBeLessThan(0.7);
    expect(answer.gradeInterval).toContain('3');
    expect(answer.control.L).toBeGreaterThan(answer.dye.L);
  });

  test('is called a blot and never a result of the four-hour standard', async () => {
    for (const more of [[], ['--json']]) {
      const { said } = await blot(example, ...control, ...sample, ...whites, ...more);
      expect(said).toContain('blot, graded with the ISO 105-A04 formula');
      expect(said).not.toMatch(/E01|undefined|NaN|\[object/);
    }
  });

  test('without white paper is graded with a warning', async () => {
    const { code, said } = await blot(example, ...control, ...sample);
    expect(code).toBe(0);
    expect(said).toContain('No white paper was marked');
  });
});

test('a refusal is three sentences, and with --json the same as data', async () => {
  const outside = ['--sample', '400,100,50,50'];
  const words = await blot(example, ...control, ...outside);
  expect(words.code).toBe(1);
  expect(words.complained.split('\n')).toHaveLength(3);
  const data = await blot(example, ...control, ...outside, '--json');
  expect(data.code).toBe(1);
  expect(JSON.parse(data.said).refused.code).toBe('blot-area-outside');
});

test('without a card and without places nothing is graded', async () => {
  for (const pictures of [[example], [example, example]]) {
    const { code, said } = await blot(...pictures, '--json');
    expect(code).toBe(1);
    expect(JSON.parse(said).refused.code).toBe('card-not-found');
  }
});

test('the refusal the guide of the example promises is the one that comes', async () => {
  const { code, complained } = await blot(example, ...control, '--sample', '190,110,50,80', ...whites);
  expect(code).toBe(1);
  expect(complained).toContain('belong to one colour');
});

test.each([
  [[]],
  [[example, ...whites]],
  [[example, ...control]],
  [[example, ...control, '--sample', '1,2,3']],
  [[example, ...control, '--sample', '1,2,3,x']],
  [[example, example, example, ...control, ...sample]],
  [[example, example, ...control, ...sample, ...whites]],
  [['no-such-picture.png', ...control, ...sample]],
])('a call of the wrong form is told so: %j', async (args) => {
  expect((await blot(...args)).code).toBe(2);
});
