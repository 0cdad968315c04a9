import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { zxingCodes } from '../adapters/codes/zxingCodes.ts';
import { sharpPictures } from '../adapters/images/sharpPictures.ts';
import { compareCommand } from './compare.ts';
import { runCli } from './runCli.ts';

const example = join(import.meta.dirname, '../../examples/colour/blot.png');

async function compare(...args: readonly string[]) {
  const said: string[] = [];
  const complained: string[] = [];
  const code = await runCli([compareCommand(sharpPictures, zxingCodes)], ['compare', ...args], {
    print: (text) => said.push(text),
    complain: (text) => complained.push(text),
    readBytes: (path) => readFile(path),
    writeBytes: async () => {},
  });
  return { code, said: said.join('\n'), complained: complained.join('\n') };
}

test('without a card in the pictures nothing is compared, and the refusal is three sentences', async () => {
  const words = await compare(example, example);
  expect(words.code).toBe(1);
  expect(words.complained.split('\n')).toHaveLength(3);
  const data = await compare(example, example, '--json');
  expect(JSON.parse(data.said).refused.code).toBe('card-not-found');
});

test.each([
  [[]],
  [[example]],
  [[example, example, example]],
  [['no-such-picture.png', example]],
  [[example, example, '--corners', '1,2,3,4,5,6,7,8']],
  [[example, example, '--corners', '1,2,3,4,5,6,7:1,2,3,4,5,6,7,8']],
  [[example, example, '--colour', 'red']],
  [[example, example, '--colour', 'red=1,2,3']],
])('a call of the wrong form is told so: %j', async (args) => {
  expect((await compare(...args)).code).toBe(2);
});
