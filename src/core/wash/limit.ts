import type { Agent, Method, Signatory } from './planFacts.ts';

/** Harshest first. */
export const agitations = [
  'rotary',
  'brush',
  'brush with the pile',
  'gentle by hand',
  'sponge one way',
  'blot only',
  'none',
] as const;
export type Agitation = (typeof agitations)[number];

/** Harshest first. */
export const extractions = [
  'centrifuge',
  'squeegee and vacuum',
  'vacuum under a screen',
  'blot with cloths',
] as const;
export type Extraction = (typeof extractions)[number];

/** Least careful first. */
export const dryingPostures = ['hung', 'flat', 'flat, face down or blotted'] as const;
export type DryingPosture = (typeof dryingPostures)[number];

/** Both ends included. */
export interface Band {
  readonly least: number;
  readonly most: number;
}

/** What may be done to a rug: one value on every axis, the most restrictive of all limits. */
export interface Bounds {
  /** The wettest method still allowed. */
  readonly method: Method;
  /** pH of every liquid that stays on the rug, the last rinse apart. */
  readonly bathPh: Band;
  /** pH the rug is left at. */
  readonly finalPh: Band;
  readonly temperatureC: number;
  /** Largest step between two liquids [K]. */
  readonly temperatureStepC: number;
  readonly agitation: Agitation;
  /** From first wetting to the end of extraction [min]. */
  readonly wetMinutes: number;
  /** In the detergent bath [min]. */
  readonly bathMinutes: number;
  /** Concentrate in the bath [g/L]. */
  readonly strengthGPerL: number;
  /** From first wetting to dry [h]. */
  readonly totalWetHours: number;
  readonly extraction: Extraction;
  readonly dryingPosture: DryingPosture;
  readonly dryingTemperatureC: number;
  /** At least so many people. */
  readonly people: number;
  readonly forbiddenAgents: readonly Agent[];
  readonly forbiddenActs: readonly string[];
  readonly requiredActs: readonly string[];
  readonly protection: readonly string[];
  readonly consents: readonly string[];
  readonly signOffs: readonly Signatory[];
}
export type Axis = keyof Bounds;
export type AxisValue = Bounds[Axis];
