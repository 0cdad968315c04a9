import { expect, test } from 'vitest';
import { problemIn } from './shownProblem.ts';

// RFC 9457, section 3.1: type, title, status, detail; extension members beside them.
test('problem details from the server are shown as its three sentences', () => {
  const problem = problemIn(409, {
    type: '/problems/tag-in-use',
    title: 'Tag 41 is on another rug.',
    detail: 'Two rugs with one tag get mixed up.',
    now: 'Take another tag.',
    facts: { tag: '41' },
  });
  expect(problem).toMatchObject({
    code: 'tag-in-use',
    happened: 'Tag 41 is on another rug.',
    matters: 'Two rugs with one tag get mixed up.',
    now: 'Take another tag.',
    facts: { tag: '41' },
    status: 409,
  });
});

test('what others recorded meanwhile comes along', () => {
  const entries = [{ revision: 4 }];
  const body = { code: 'stream-moved-on', title: 'Somebody was faster.', detail: '', now: '', entries };
  expect(problemIn(409, body).entries).toEqual(entries);
});

test.each([null, 'gone', 42, {}, { title: 7 }, []])('an answer of %j is told as not readable', (body) => {
  expect(problemIn(502, body).code).toBe('answer-not-readable');
});
