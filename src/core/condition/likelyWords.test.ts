import { describe, expect, test } from 'vitest';
import { conditionWords } from './conditionWords.ts';
import { likelyWords } from './likelyWords.ts';

const line = { shape: 'line', atEdge: false, used: [] } as const;

describe('words offered for a mark', () => {
  test('nothing typed offers the whole list, words for such a shape first', () => {
    const offered = likelyWords('', line);
    expect(offered).toHaveLength(conditionWords.length);
    const lines = conditionWords.filter(({ shape }) => shape === 'line').length;
    expect(offered.slice(0, lines).every(({ shape }) => shape === 'line')).toBe(true);
  });

  test('a line along an edge is first looked for among ends and sides', () => {
    expect(likelyWords('', { ...line, atEdge: true })[0]?.family).toBe('ends and sides');
  });

  test('a word that begins with what was typed comes before one that only means it', () => {
    expect(likelyWords('ho', { shape: 'line', atEdge: true, used: [] })[0]?.word).toBe('hole');
  });

  test('what fits nothing offers nothing', () => {
    expect(likelyWords('xyzzy', line)).toEqual([]);
  });

  test('a word used on this rug before comes before its like', () => {
    const first = likelyWords('', { shape: 'polygon', atEdge: false, used: ['felting'] })[0];
    expect(first?.word).toBe('felting');
  });
});
