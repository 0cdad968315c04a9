import { readdirSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { dryCommand } from './dry.ts';
import { runCli } from './runCli.ts';

const examples = join(import.meta.dirname, '../../examples/dry');

async function dry(file: string | object, ...more: readonly string[]) {
  const said: string[] = [];
  const complained: string[] = [];
  const code = await runCli([dryCommand], ['dry', typeof file === 'string' ? file : 'given.json', ...more], {
    print: (text) => said.push(text),
    complain: (text) => complained.push(text),
    readBytes: (path) =>
      typeof file === 'string'
        ? readFile(path)
        : Promise.resolve(new TextEncoder().encode(JSON.stringify(file))),
    writeBytes: async () => {},
  });
  return { code, said: said.join('\n'), complained: complained.join('\n') };
}

describe('the worked examples', () => {
  test.each(readdirSync(examples).filter((name) => name.endsWith('.json')))('%s', async (name) => {
    const { code, said } = await dry(join(examples, name), '--json');
    expect(code).toBe(0);
    const answer = JSON.parse(said);
    expect(Math.abs(answer.waterBalanceError)).toBeLessThan(1e-9);
    const words = await dry(join(examples, name));
    expect(words.said).not.toMatch(/undefined|NaN|\[object/);
    for (const { id, endRegain } of answer.rugs) {
      expect(endRegain).toBeGreaterThan(0);
      expect(words.said).toContain(id);
    }
  });
});

test('says for an owner when a rug is dry, what of its weight is water, and first what has to be acted on', async () => {
  const { said } = await dry({
    hours: 72,
    room: { volumeM3: 60, airC: 26, startRh: 0.5, airSpeed: 1, airChangesPerHour: 0.2 },
    outside: { airC: 32, rh: 0.9 },
    rugs: ['first', 'second'].map((id, i) => ({
      ...{ id, areaM2: 4, dryMassKg: 12, fibres: { wool: 1 }, startRegain: i === 0 ? 0.42 : 1.2 },
      ...{ posture: 'hung', hungAtHour: 2 * i, targetRegain: i === 0 ? 0.4 : 0.173 },
    })),
  });
  const [first = '', second = '', alarm = ''] = said.split('\n');
  expect(first).toMatch(/^first: dry \d+\.\d h after hanging \(water down to 40\.0 % of its dry weight\)/);
  expect(second).toMatch(/^second: not dry in the hours looked at \(dry is 17\.3 % /);
  expect(alarm).toMatch(/^! /);
  expect(said).toContain('came in with outside air');
  expect(said).toContain('second: not dry within 48 h of its first wetting. ');
});

test('a logger’s file gives the room’s air as far as it goes, and its wrong lines are said', async () => {
  const rug = join(examples, 'one-rug-in-a-warm-room.json');
  const file = join(examples, 'logger-of-a-night.csv');
  const words = await dry(rug, '--air', file);
  expect(words.code).toBe(0);
  expect(words.said).toContain('Line 31: a humidity of 140 cannot be');
  expect(words.said).toContain('counts once');
  expect(words.said).toContain('went while the air was measured, by which way is not known');
  const { said } = await dry(rug, '--air', file, '--json');
  const { hourly } = JSON.parse(said);
  expect(hourly[5].isMeasured).toBe(true);
  expect(hourly[5].airC).toBeLessThan(24);
  expect(hourly[14]).toMatchObject({ isMeasured: false, airC: 32 });
  expect((await dry(rug, '--air', 'nowhere.csv')).code).toBe(2);
  expect((await dry(rug, '--air', file, '--from', 'yesterday')).code).toBe(2);
});

test('what past rugs said is learnt for this room, and a strange one named', async () => {
  const rug = (name: string, likely: number) => ({
    ...{ rug: name, construction: null, resistance: null, criticalRegain: null },
    g: { likely, spread: 0.05 },
  });
  const past = [...[0.68, 0.7, 0.72, 0.71, 0.69, 0.7, 0.73].map((g, i) => rug(`${i}`, g)), rug('odd', 4)];
  const said: string[] = [];
  const example = join(examples, 'one-rug-in-a-warm-room.json');
  const code = await runCli([dryCommand], ['dry', example, '--past', 'past.json'], {
    print: (text) => said.push(text),
    complain: () => {},
    readBytes: (path) =>
      path === 'past.json' ? Promise.resolve(new TextEncoder().encode(JSON.stringify(past))) : readFile(path),
    writeBytes: async () => {},
  });
  expect(code).toBe(0);
  expect(said.join()).toMatch(/Learnt from 8 past rugs: this room dries 0\.7\d times/);
  expect(said.join()).toContain('Past rug odd fits none of the others');
  expect((await dry(scenario, '--past', example)).code).toBe(1);
});

const scenario = {
  hours: 24,
  room: { volumeM3: 100, airC: 32, startRh: 0.35, airSpeed: 1.5, airChangesPerHour: 0.5 },
  outside: { airC: 15, rh: 0.6 },
  dehumidifiers: [{ litresPerDay: 70, ratedC: 30, ratedRh: 0.8 }],
  rugs: [{ id: 'a', areaM2: 6, dryMassKg: 18, fibres: { wool: 1 }, startRegain: 1, faces: 2 }],
};

test('a field that is missing or misspelt is named', async () => {
  const { hours: _hours, ...without } = scenario;
  const missing = await dry(without);
  expect(missing.code).toBe(1);
  expect(missing.complained).toContain('hours');
  const misspelt = await dry({ ...scenario, room: { ...scenario.room, airspeed: 1 } }, '--json');
  expect(misspelt.code).toBe(1);
  expect(JSON.parse(misspelt.said).refused.happened).toContain('room');
});

test('a scenario that cannot be right is refused with what to do', async () => {
  const { code, complained } = await dry({ ...scenario, dehumidifiers: [{ litresPerDay: 70 }] });
  expect(code).toBe(1);
  expect(complained).toContain('rated at no stated condition');
});

test('a call without a file is a wrong call', async () => {
  expect((await dry('--json')).code).toBe(2);
});

test('a fibre nobody named is said to count as the slowest', async () => {
  const given = {
    hours: 60,
    room: { volumeM3: 60, airC: 26, startRh: 0.5, airSpeed: 1, airChangesPerHour: 0.2 },
    outside: { airC: 32, rh: 0.9 },
    rugs: [{ id: 'porch', areaM2: 4, dryMassKg: 12, fibres: { unknown: 1 }, posture: 'hung' }],
  };
  const { said } = await dry(given);
  expect(said).toMatch(/porch: fibre unknown\. It counts as cotton, .*Identify it\./);
  const answer = JSON.parse((await dry(given, '--json')).said);
  expect(answer.rugs[0].unknownFibreAs).toBe('cotton');
});
