import fc from 'fast-check';
import { expect, test } from 'vitest';
import { searchWords } from './searchWords.ts';

test.each([
  ['Çelebi, No. 12', ['celebi', 'no', '12']],
  ['T-0071', ['t', '0071']],
  ['İsparta IŞIK', ['isparta', 'isik']],
  ['قالی ۱۲', ['قالی', '۱۲']],
  ['Straße  naïve\n', ['straße', 'naive']],
  ['red RED red', ['red']],
  ['…!?', []],
])('%s is found by %j', (text, words) => {
  expect(searchWords(text)).toEqual(words);
});

test('words are found by themselves, in any case', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme' }), (text) => {
      const words = searchWords(text);
      expect(searchWords(...words)).toEqual(words);
    }),
  );
});
