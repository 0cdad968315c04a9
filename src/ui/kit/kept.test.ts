import { expect, test } from 'vitest';
import { forgetValue, isKept, keepFor, keepValue, keptValue, onKept, openKept } from './kept.ts';

test('a browser that may keep nothing still holds what is typed until the page is closed', async () => {
  await openKept();
  keepValue('receive', { tag: '41' });
  expect(keptValue('receive')).toEqual({ tag: '41' });
});

test('what the server has acknowledged is no longer kept', () => {
  keepValue('receive', { tag: '41' });
  forgetValue('receive');
  expect(isKept('receive')).toBe(false);
});

test('every field that shows a kept value hears of a change, until it is gone', () => {
  const heard: unknown[] = [];
  const stop = onKept('note', () => heard.push(keptValue('note')));
  keepValue('note', 'a');
  keepValue('note', 'ab');
  stop();
  keepValue('note', 'abc');
  expect(heard).toEqual(['a', 'ab']);
});

test('on a shared tablet nobody sees what another typed, and each finds their own again', () => {
  keepFor('mirela');
  keepValue('receive', { client: 'Joseph Okello' });
  const shown: unknown[] = [];
  const stop = onKept('receive', () => shown.push(keptValue('receive')));
  keepFor('tobin');
  expect(isKept('receive')).toBe(false);
  keepValue('receive', { client: 'Ada Lindqvist' });
  keepFor('mirela');
  expect(keptValue('receive')).toEqual({ client: 'Joseph Okello' });
  stop();
  expect(shown).toEqual([undefined, { client: 'Ada Lindqvist' }, { client: 'Joseph Okello' }]);
});
