import { describe, expect, test } from 'vitest';
import { mixCommand } from './mix.ts';
import { runCli } from './runCli.ts';

const call = async (scenario: unknown): Promise<{ code: number; out: string; err: string }> => {
  const out: string[] = [];
  const err: string[] = [];
  const code = await runCli([mixCommand], ['mix', 'bath.json', '--json'], {
    print: (text) => out.push(text),
    complain: (text) => err.push(text),
    readBytes: async () => new TextEncoder().encode(JSON.stringify(scenario)),
    writeBytes: () => Promise.reject(new Error('writes nothing')),
  });
  return { code, out: out.join('\n'), err: err.join('\n') };
};

const soda = { agent: 'sodium carbonate', grams: 40 };
const water = { alkalinityMgPerLCaCO3: 250 };

describe('wefthouse mix', () => {
  test('everything asked of one bath is answered under its own name', async () => {
    const { code, out } = await call({
      ...{ litres: 40, temperatureC: 28, water, add: [soda] },
      carryOver: { massKg: 10, retainedLPerKg: 0.33, freshLitres: 30, pH: 5.5 },
      effluent: { with: [{ litres: 4000, temperatureC: 15, alkalinityMgPerLCaCO3: 0 }] },
      hardness: { value: 14, unit: '°dH', agent: 'soap, as sodium oleate' },
      surfactant: { areaM2: 6 },
      rinse: { massKg: 10, prices: { waterPerM3: 5, hour: 30 } },
      peroxide: { molPerL: 30 / 34.015 },
    });
    const told = JSON.parse(out);
    expect(code).toBe(0);
    expect(told.carryOver.agent).toBe('citric acid, anhydrous');
    expect(told.carryOver.heldLitres).toBeCloseTo(3.3, 10);
    expect(told.effluent.mayGo).toBe(false);
    // 40 L of 2.4968 mmol/L take two oleate ions each: worked by hand.
    expect(told.hardness.grams).toBeCloseTo(60.8, 1);
    expect(told.surfactant.grams).toEqual({ least: 90, most: 240 });
    expect(told.rinse).toHaveLength(4);
    // 3 % hydrogen peroxide is sold as 10 volumes: common practice, no published source.
    expect(told.peroxide.volumes).toBeCloseTo(10, 0);
  });

  test('water without alkalinity is asked for, and the range it may have is told', async () => {
    const { out } = await call({ add: [{ agent: 'citric acid, anhydrous', grams: 0.5 }] });
    const told = JSON.parse(out);
    expect(told.alkalinityAssumed).toEqual({ least: 0, most: 400 });
    expect(told.phRange[0]).toBeLessThan(told.pH);
    expect(told.phRange[1]).toBeGreaterThan(told.pH);
    const drain = await call({ add: [soda], effluent: {} });
    expect([drain.code, drain.err]).toEqual([2, expect.stringContaining('water.alkalinityMgPerLCaCO3')]);
  });

  test.each([
    [{ add: [{ ...soda, strength: -0.1 }] }, 'strength of sodium carbonate'],
    [{ add: [{ ...soda, strength: 1.2 }] }, 'strength of sodium carbonate'],
    [{ add: [{ agent: 'moon dust', grams: 1 }] }, 'moon dust'],
    [{ target: { agent: 'acetic acid', pH: 15 } }, 'target pH'],
    [{ hardness: { value: 14, unit: '°dH', agent: 'alcohol ethoxylate' } }, 'alcohol ethoxylate'],
    [{ rinse: { massKg: -1 } }, 'dry mass'],
  ])('%j is refused by name', async (wrong, named) => {
    const { code, out } = await call({ water, ...wrong });
    expect(code).toBe(1);
    expect(JSON.parse(out).refused.happened).toContain(named);
  });
});
