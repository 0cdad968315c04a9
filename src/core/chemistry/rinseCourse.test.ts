import { expect, test } from 'vitest';
import { rinseWays } from './dilution.ts';
import { rinseCourse } from './rinseCourse.ts';

const ways = () => {
  const found = rinseWays(0.005);
  if (!found.ok) throw new Error(found.problem.code);
  return found.value;
};

test('every course begins with the whole bath and ends where its way ends, always falling', () => {
  for (const way of ways()) {
    const course = rinseCourse(way);
    expect(course[0]).toEqual({ litresPerKg: 0, left: 1 });
    expect(course.at(-1)?.litresPerKg).toBeCloseTo(way.litresPerKg, 9);
    expect(course.at(-1)?.left).toBeCloseTo(way.left, 9);
    const left = course.map((point) => point.left);
    expect(left).toEqual([...left].sort((a, b) => b - a));
  }
});

test('one fill of ten litres to two held leaves a sixth', () => {
  // By hand: 2 / (2 + 10).
  const drained = ways().find(({ way }) => way === 'fill and drain');
  if (drained === undefined) throw new Error('no such way');
  expect(rinseCourse(drained)[1]).toEqual({ litresPerKg: 10, left: 2 / 12 });
});
