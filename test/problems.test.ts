import { describe, expect, test } from 'vitest';
import { problemPage } from '../src/http/problemPage.ts';
import { namedCodes, problemStatus } from '../src/http/problemStatus.ts';
import { problemCodes } from '../src/text/problemWords.ts';

describe('every problem has its words, its status and its page', () => {
  test.each(problemCodes)('%s', (code) => {
    expect(code).toMatch(/^[a-z]+(-[a-z]+)*$/);
    expect([400, 401, 403, 404, 409, 413, 415, 422, 429, 500, 503]).toContain(problemStatus(code));
    const page = problemPage(code, 'n') ?? '';
    expect(page).toContain(`<code>${code}</code>`);
    expect(page).not.toMatch(/undefined|NaN|\[object|\bnull\b/);
  });

  test('every code that is given a status of its own is one that has words', () => {
    expect(namedCodes.filter((code) => !problemCodes.includes(code))).toEqual([]);
    expect(new Set(namedCodes).size).toBe(namedCodes.length);
  });

  test('a code that is none has no page', () => {
    expect(problemPage('no-such-problem', 'n')).toBeNull();
  });
});
