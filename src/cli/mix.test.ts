import { describe, expect, test } from 'vitest';
import { mixCommand } from './mix.ts';
import { runCli } from './runCli.ts';

const call = async (
  scenario: unknown,
  flags: readonly string[] = ['--json'],
): Promise<{ code: number; out: string; err: string }> => {
  const out: string[] = [];
  const err: string[] = [];
  const code = await runCli([mixCommand], ['mix', 'bath.json', ...flags], {
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

  test('a field the water has not is answered with those it has', async () => {
    const { code, out } = await call({ water: { alkalinityMgPerLCaCO3: 245, iron: 2 }, add: [soda] });
    expect(code).toBe(1);
    expect(out).toMatch(/water\.iron is 2\..*names known there: alkalinityMgPerLCaCO3\./s);
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

describe('mix read aloud', () => {
  const aloud = async (scenario: unknown) => (await call(scenario, [])).out;

  test('tells what to weigh, from how little to begin, and to measure', async () => {
    const out = await aloud({ litres: 40, water, target: { agent: 'citric acid, monohydrate', pH: 5 } });
    // 0.555 g of anhydrous acid a litre (computation from published constants), 210.14 for 192.12 of it.
    expect(out).toMatch(/^Weigh 2[34](\.\d)? g of citric acid, monohydrate for 40 L, to pH 5\.0\./);
    expect(out).toContain('Begin with the least');
    expect(out).toMatch(/Expect pH 5\.0 \(4\.\d to 5\.\d\) at 25 °C\. .* measure the pH before use\./);
    expect(out).toContain('Gloves and goggles');
    expect(out).not.toMatch(/[{}[\]]|undefined|NaN|null/);
  });

  test('says first what must never be mixed', async () => {
    const add = [
      { agent: 'sodium metabisulphite', grams: 10 },
      { agent: 'citric acid', grams: 10 },
    ];
    expect(await aloud({ water, add })).toMatch(/^STOP\. This bath gives off sulfur dioxide/);
    const bleach = [
      { agent: 'bleach', millilitres: 20, strength: 0.05, densityGPerMl: 1.07 },
      { agent: 'ammonia', grams: 2 },
    ];
    expect(await aloud({ water, add: bleach })).toMatch(/^STOP\. This bath gives off chloramines/);
  });

  test('warns of gas by the softest water where nobody stated it', async () => {
    // Bounds of R24 are workshop settings; that water without alkalinity leaves an acid bath more acid is chemistry.
    const add = [
      { agent: 'sodium metabisulphite', grams: 1 },
      { agent: 'citric acid, anhydrous', grams: 0.3 },
    ];
    const told = async (scenario: object) => JSON.parse((await call({ add, ...scenario })).out);
    const [stated, soft, unknown] = [
      await told({ water: { alkalinityMgPerLCaCO3: 200 } }),
      await told({ water: { alkalinityMgPerLCaCO3: 0 } }),
      await told({}),
    ];
    expect(stated.pH).toBeGreaterThan(4);
    expect(unknown.pH).toBe(stated.pH);
    expect(soft.warnings).toMatchObject([{ gas: 'sulfur dioxide', level: 'blocked' }]);
    expect(unknown.warnings).toEqual(soft.warnings);
    expect(stated.warnings).not.toEqual(soft.warnings);
  });

  test('reads every part as sentences', async () => {
    const out = await aloud({
      ...{ litres: 40, temperatureC: 28, water, add: [soda] },
      carryOver: { massKg: 10, retainedLPerKg: 0.33, freshLitres: 30, pH: 5.5 },
      effluent: {},
      hardness: { value: 14, unit: '°dH', agent: 'soap, as sodium oleate' },
      surfactant: { activeGPerL: 0.5, strength: 0.25 },
      rinse: { massKg: 10, prices: { waterPerM3: 5, hour: 30 } },
      peroxide: { molPerL: 0.88 },
    });
    for (const words of [
      'still holds 3.3 L',
      'may not go to the sewer',
      '60.8 g of soap',
      '80 g of the product',
      'cheapest first',
      'volumes',
    ]) {
      expect(out).toContain(words);
    }
    expect(out).not.toMatch(/[{}[\]]|undefined|NaN|null/);
  });
});

describe('names and amounts', () => {
  const told = async (scenario: unknown) => JSON.parse((await call(scenario)).out);
  const pure = { ...water, alkalinityMgPerLCaCO3: 0 };

  test('one amount may be written in any unit of mass, volume or moles', async () => {
    const same = [
      { grams: 6.0052 },
      { kilograms: 0.0060052 },
      { milligrams: 6005.2 },
      { moles: 0.1 },
      { millilitres: 6.0052 / 1.049 },
      { litres: 6.0052 / 1049 },
    ];
    for (const amount of same) {
      // CRC Handbook, pKa 4.756: 0.1 mol/L of acetic acid at unit activity, solved by hand.
      const { pH } = await told({
        water: pure,
        activity: 'ideal',
        add: [{ agent: 'acetic acid', ...amount }],
      });
      expect(pH).toBeCloseTo(2.881, 2);
    }
    const two = await call({ water, add: [{ agent: 'acetic acid', grams: 1, litres: 1 }] });
    expect([two.code, JSON.parse(two.out).refused.now]).toEqual([1, expect.stringContaining('one of grams')]);
  });

  test('a dose of vinegar is told in grams and millilitres, wider for its assumed strength', async () => {
    const vinegar = await told({ water, target: { agent: 'white vinegar', pH: 5 } });
    const acid = await told({ water, target: { agent: 'acetic acid', pH: 5 } });
    expect(vinegar.millilitres * 1.006).toBeCloseTo(vinegar.grams, 9);
    expect(vinegar.interval[1] / vinegar.grams).toBeGreaterThan(acid.interval[1] / acid.grams);
    expect(vinegar.notes).toMatchObject([{ note: 'strength assumed', strength: 0.05 }]);
    const labelled = await told({ water, target: { agent: 'white vinegar', pH: 5, strength: 0.06 } });
    expect(labelled.grams / vinegar.grams).toBeCloseTo(5 / 6, 9);
  });

  test('an agent nobody knows is answered with names like it', async () => {
    const { refused } = await told({ water, add: [{ agent: 'sodium bicarbonat', grams: 1 }] });
    expect(refused.now).toContain('Did you mean sodium bicarbonate');
  });
});
