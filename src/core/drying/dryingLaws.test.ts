import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dryingRug, dryingScenario, heldAir } from '../../../test/support/dryingRoom.ts';
import { equilibriumRegain } from '../air/index.ts';
import { prepareRoom } from './preparedRoom.ts';
import { makeRoomRunner, usualFineness } from './runRoom.ts';
import type { DryRug, DryScenario } from './scenario.ts';
import { knownUnknowns } from './unknowns.ts';

const runOf = (scenario: DryScenario, relative = 1e-5, hours: readonly number[] = []) => {
  const room = prepareRoom(scenario);
  return makeRoomRunner(room)(knownUnknowns(room), hours, { kind: 'error', relative });
};
const hoursOf = (scenario: DryScenario) => runOf(scenario).targetAtHour[0] ?? Number.POSITIVE_INFINITY;

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const fibres = fc.constantFrom(
  { wool: 1 },
  { wool: 0.75, cotton: 0.25 },
  { silk: 1 },
  { jute: 0.5, viscose: 0.5 },
);
const anyRug = fc.record({
  areaM2: number(0.5, 15),
  massPerM2: number(1, 6),
  startRegain: number(0.3, 2.4),
  hungAtHour: number(0, 20),
  fibres,
});
const anyRoom = fc.record({
  volumeM3: number(30, 500),
  airC: number(12, 38),
  startRh: number(0.2, 0.9),
  airSpeed: number(0, 3),
  airChangesPerHour: number(0, 5),
});

test('water is conserved to 1e-9 of the load, whatever hangs where and whichever way it leaves', () => {
  fc.assert(
    fc.property(
      fc.array(anyRug, { minLength: 1, maxLength: 6 }),
      anyRoom,
      fc.array(
        fc.record({ litresPerDay: number(0, 200), type: fc.constantFrom('refrigerant', 'desiccant') }),
        {
          maxLength: 3,
        },
      ),
      number(-10, 12),
      (rugs, room, machines, outsideC) => {
        const course = runOf(
          dryingScenario({
            room,
            outside: { airC: outsideC, rh: 0.7 },
            dehumidifiers: machines.map((machine) => ({ ...machine, ratedC: 27, ratedRh: 0.6 })),
            rugs: rugs.map(({ massPerM2, ...rug }, i) =>
              dryingRug({ ...rug, id: `rug ${i}`, dryMassKg: rug.areaM2 * massPerM2 }),
            ),
          }),
          1e-3,
        );
        expect(Math.abs(course.waterBalanceError)).toBeLessThan(1e-9);
        expect(Math.min(...course.endRegain)).toBeGreaterThan(-1e-4);
        expect(Math.max(...course.endRegain)).toBeLessThan(3);
      },
    ),
    { numRuns: 60 },
  );
});

describe('water is conserved to 1e-9 of the load also', () => {
  const conserved = (room: DryScenario['room'], of: Partial<DryScenario>, rug: Partial<DryRug>) => {
    const rugs = [dryingRug({ ...rug, id: 'first' }), dryingRug({ id: 'second', hungAtHour: 5 })];
    const course = runOf(dryingScenario({ ...of, room, rugs }), 1e-3);
    expect(Math.abs(course.waterBalanceError)).toBeLessThan(1e-9);
    expect(Math.min(...course.endRegain)).toBeGreaterThan(-1e-4);
  };
  const rug = fc.record({ areaM2: number(0.5, 15), startRegain: number(0.3, 2.4), fibres });
  const runs = { numRuns: 25 };

  test('in a room whose temperature follows from its heat', () => {
    const warming = fc.record({
      ...{ volumeM3: number(30, 500), startC: number(8, 35), startRh: number(0.2, 0.9) },
      ...{ airSpeed: number(0, 3), airChangesPerHour: number(0, 5), wallsWPerK: number(20, 400) },
    });
    fc.assert(
      fc.property(warming, rug, number(-10, 30), number(0.3, 6), (room, first, airC, kw) => {
        conserved(room, { outside: { airC, rh: 0.7 }, heaters: [{ kw, untilC: 32 }] }, first);
      }),
      runs,
    );
  });

  test('in air that a logger measured for a while, and that is reckoned from there on', () => {
    const row = fc.record({ airC: number(12, 38), rh: number(0.2, 0.95) });
    const measured = fc
      .array(row, { minLength: 2, maxLength: 12 })
      .map((rows) => rows.map((one, i) => ({ ...one, hour: i * 1.5 })));
    fc.assert(
      fc.property(measured, rug, number(0, 5), (rows, first, airChangesPerHour) => {
        const room = { volumeM3: 100, airC: 25, airSpeed: 1, startRh: 0.5, airChangesPerHour };
        conserved({ ...room, measured: rows }, {}, first);
      }),
      runs,
    );
  });
});

test('hot damp air let into a cool room condenses there, and is counted', () => {
  const room = { volumeM3: 100, airC: 14, startRh: 0.6, airSpeed: 0.5, airChangesPerHour: 2 };
  const course = runOf(dryingScenario({ room, outside: { airC: 30, rh: 0.9 }, dehumidifiers: [] }));
  const [byAir = 0, condensed = 0] = course.paths;
  expect(byAir).toBeLessThan(0);
  expect(condensed).toBeGreaterThan(0);
  expect(course.peakRh).toBeGreaterThan(0.99);
  expect(Math.abs(course.waterBalanceError)).toBeLessThan(1e-9);
});

describe('in air that is held', () => {
  const held = fc.record({ airC: number(12, 38), rh: number(0.1, 0.55), airSpeed: number(0.1, 3), fibres });
  const slack = 1 + 1e-4;

  test('more air speed never dries later', () => {
    fc.assert(
      fc.property(held, number(0.1, 3), ({ airC, rh, airSpeed, fibres: of }, other) => {
        const at = (speed: number) =>
          hoursOf(dryingScenario({ room: heldAir(airC, rh, speed), rugs: [dryingRug({ fibres: of })] }));
        expect(at(Math.max(airSpeed, other))).toBeLessThanOrEqual(at(Math.min(airSpeed, other)) * slack);
      }),
      { numRuns: 30 },
    );
  });
  test('lower humidity never dries later', () => {
    fc.assert(
      fc.property(held, number(0.1, 0.55), ({ airC, rh, airSpeed, fibres: of }, other) => {
        const at = (humidity: number) =>
          hoursOf(
            dryingScenario({ room: heldAir(airC, humidity, airSpeed), rugs: [dryingRug({ fibres: of })] }),
          );
        expect(at(Math.min(rh, other))).toBeLessThanOrEqual(at(Math.max(rh, other)) * slack);
      }),
      { numRuns: 30 },
    );
  });
  test('more extraction before hanging never dries later', () => {
    fc.assert(
      fc.property(held, number(0.4, 2.4), number(0.4, 2.4), ({ airC, rh, airSpeed, fibres: of }, a, b) => {
        const at = (startRegain: number) =>
          hoursOf(
            dryingScenario({
              room: heldAir(airC, rh, airSpeed),
              rugs: [dryingRug({ fibres: of, startRegain })],
            }),
          );
        expect(at(Math.min(a, b))).toBeLessThanOrEqual(at(Math.max(a, b)) * slack);
      }),
      { numRuns: 30 },
    );
  });
  test('no rug passes below its regain at rest', () => {
    fc.assert(
      fc.property(held, ({ airC, rh, airSpeed, fibres: of }) => {
        const hours = Array.from({ length: 73 }, (_, hour) => hour);
        const scenario = dryingScenario({
          room: heldAir(airC, rh, airSpeed),
          rugs: [dryingRug({ fibres: of })],
        });
        const rest = equilibriumRegain(of, rh, 'from the wet side').likely;
        for (const regain of runOf(scenario, 1e-3, hours).regains[0] ?? [])
          expect(regain).toBeGreaterThan(rest - 1e-4);
      }),
      { numRuns: 30 },
    );
  });
});

test('one more machine never makes the only rug of a room dry later', () => {
  fc.assert(
    fc.property(anyRoom, number(10, 200), (room, litresPerDay) => {
      const machine = { litresPerDay, ratedC: 27, ratedRh: 0.6 };
      const less = hoursOf(dryingScenario({ room, dehumidifiers: [machine] }));
      expect(hoursOf(dryingScenario({ room, dehumidifiers: [machine, machine] }))).toBeLessThanOrEqual(
        less * 1.0001,
      );
    }),
    { numRuns: 30 },
  );
});

test('a neighbour’s water delays a rug in a shared room', () => {
  const alone = hoursOf(dryingScenario());
  const shared = hoursOf(dryingScenario({ rugs: [dryingRug(), dryingRug({ id: 'b', startRegain: 1.6 })] }));
  expect(shared).toBeGreaterThan(alone * 1.1);
});

test('two halves of a rug dry like the whole', () => {
  const half = { areaM2: 3, dryMassKg: 9 };
  const whole = hoursOf(dryingScenario());
  const halves = runOf(dryingScenario({ rugs: [dryingRug(half), dryingRug({ ...half, id: 'b' })] }));
  for (const hours of halves.targetAtHour) expect(Math.abs((hours ?? 0) / whole - 1)).toBeLessThan(1e-4);
});

test('steps of half the length, and errors a tenth as large, change the answer by less than 0.1 %', () => {
  const rugs = [0, 1, 2].map((i) => dryingRug({ id: `rug ${i}`, areaM2: 3 + 2 * i, hungAtHour: 2.5 * i }));
  const room = prepareRoom(dryingScenario({ rugs }));
  const run = makeRoomRunner(room);
  const usual = run(knownUnknowns(room), [], usualFineness);
  const finer = run(knownUnknowns(room), [], { kind: 'error', relative: 1e-4 });
  const steps = [300, 150].map((seconds) => run(knownUnknowns(room), [], { kind: 'steps', seconds }));
  for (const [i, hours] of usual.targetAtHour.entries()) {
    for (const other of [finer, ...steps]) {
      expect(Math.abs((other.targetAtHour[i] ?? 0) / (hours ?? 1) - 1)).toBeLessThan(1e-3);
    }
    expect(Math.abs((steps[0]?.targetAtHour[i] ?? 0) / (steps[1]?.targetAtHour[i] ?? 1) - 1)).toBeLessThan(
      1e-3,
    );
  }
});
