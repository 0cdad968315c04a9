import type { DryRug, DryScenario } from '../../src/core/drying/index.ts';

/** A rug of wool on cotton, extracted, hung. */
export const dryingRug = (changed: Partial<DryRug> = {}): DryRug => ({
  id: 'a',
  areaM2: 6,
  dryMassKg: 18,
  fibres: { wool: 0.75, cotton: 0.25 },
  startRegain: 1,
  faces: 2,
  ...changed,
});

/** A warm room with one machine. */
export const dryingScenario = (changed: Partial<DryScenario> = {}): DryScenario => ({
  hours: 72,
  uncertainty: false,
  room: { volumeM3: 100, airC: 32, startRh: 0.35, airSpeed: 1.5, airChangesPerHour: 0.5 },
  outside: { airC: 15, rh: 0.6 },
  dehumidifiers: [{ litresPerDay: 70, ratedC: 30, ratedRh: 0.8 }],
  rugs: [dryingRug()],
  ...changed,
});

/** Air that is held at a temperature and humidity whatever hangs in it. */
export const heldAir = (airC: number, rh: number, airSpeed: number): DryScenario['room'] => ({
  volumeM3: 100,
  airSpeed,
  airChangesPerHour: 0,
  air: [{ hour: 0, airC, rh }],
});
