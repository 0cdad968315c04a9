import { describe, expect, test } from 'vitest';
import { convertCommand } from './convert.ts';
import { runCli } from './runCli.ts';

const call = async (...args: string[]): Promise<{ code: number; out: string; err: string }> => {
  const out: string[] = [];
  const err: string[] = [];
  const code = await runCli([convertCommand], ['convert', ...args], {
    print: (text) => out.push(text),
    complain: (text) => err.push(text),
    readBytes: () => Promise.reject(new Error('reads nothing')),
    writeBytes: () => Promise.reject(new Error('writes nothing')),
  });
  return { code, out: out.join('\n'), err: err.join('\n') };
};

describe('wefthouse convert', () => {
  test('40 raj comes out in every notation, with what was assumed', async () => {
    const { code, out } = await call('40', 'raj');
    expect(code).toBe(0);
    expect(out).toContain('210.7  knots per square inch  (if the knots are square)');
    expect(out).toContain('raj (knots in 7 cm)');
  });

  test('JSON holds the numbers unrounded', async () => {
    const { out } = await call('9/60', 'indian', '--to', 'per-square-inch', '--json');
    const answer = JSON.parse(out);
    expect(answer.densities[0].values[0]).toBeCloseTo(133.333, 3);
    expect(answer.assumesSquare).toBe(false);
  });

  test('a rug of so many square metres gives knots and a range of days', async () => {
    const { out } = await call('50', 'raj', '--area-m2', '6', '--repair-cm2', '20');
    expect(out).toMatch(/3,060,000 knots in 6 m².*510 days \(306 to 1,020\)/);
    expect(out).toContain('hours with the foundation');
  });

  test('an unknown notation is refused with the list of known ones', async () => {
    const { code, err } = await call('40', 'cubits');
    expect(code).toBe(1);
    expect(err).toContain('per-square-inch');
  });

  test('a refusal with --json is JSON', async () => {
    const { code, out } = await call('9', 'indian', '--json');
    expect(code).toBe(1);
    expect(JSON.parse(out).refused.code).toBe('knot-density-not-readable');
  });

  test.each([
    [['40']],
    [['40', 'raj', 'more']],
    [['40', 'raj', '--area-m2', 'big']],
    [['40', 'raj', '--nope']],
  ])('the call %j does not fit the form', async (args) => {
    expect((await call(...args)).code).toBe(2);
  });
});
