import type { Agent, Certainty, FindingCode, StainClass } from './planFacts.ts';
import { conductsAsSupply, phFromSupply, type RinseLimits, type RinseReading } from './rinseWatch.ts';
import type { SourceKey } from './washPlan.ts';

export interface FlowChoice {
  readonly id: string;
  readonly words: string;
  /** The step it leads back to. */
  readonly back?: string;
  /** What it says about the rug. */
  readonly finding?: FindingCode;
  readonly certainty?: Certainty;
  /** What it says was laid. */
  readonly lays?: readonly Agent[];
}

export interface FlowStep {
  readonly id: string;
  readonly do: string;
  /** What is written down; `tests` and `corrective aim` stand elsewhere in the record. */
  readonly log: 'done' | 'photograph' | 'reading' | 'pH' | 'choice' | 'tests' | 'corrective aim';
  readonly until?: 'at supply';
  /** Water touches the rug: only within a wet step of the plan, which starts the wet clock. */
  readonly wets?: true;
  /** What it leaves in the rug. */
  readonly lays?: readonly Agent[];
  readonly dwellMinutes?: number;
  readonly mostC?: number;
  readonly choices?: readonly FlowChoice[];
}

/** Work with an order and a log of its own. */
export interface Flow {
  readonly id: string;
  readonly title: string;
  readonly stains?: readonly StainClass[];
  readonly findings?: readonly FindingCode[];
  /** Gone through at each place of its own. */
  readonly perPlace: boolean;
  readonly because: string;
  readonly steps: readonly FlowStep[];
  readonly never: readonly string[];
  readonly cautions: readonly string[];
  readonly source: SourceKey;
}

/** One thing logged in a flow. */
export interface FlowEntry extends RinseReading {
  readonly step: string;
  readonly choice?: string | undefined;
  readonly photos: readonly string[];
}

/**
 * What a step of a flow left in the rug. Where its answer is what says so and none was given, anything that it
 * might have been.
 *
 * @param step - of a flow; undefined where the flow has it no longer
 * @param choice - the answer recorded with it
 * @source data/wash/flows.json, each row with its own source
 */
export function laidIn(step: FlowStep | undefined, choice: string | undefined): readonly Agent[] {
  const { lays = [], choices = [] } = step ?? {};
  const answered = choices.filter(({ id }) => choice === undefined || id === choice);
  return [...new Set([...lays, ...answered.flatMap((one) => one.lays ?? [])])];
}

/** What the rest of the record says that a flow waits for. */
export interface FlowGround {
  readonly isEveryTestMade: boolean;
  readonly isAimAgreed: boolean;
  /** When rinse water counts as the supply. */
  readonly limits: RinseLimits;
}

export type FlowState = 'done' | 'now' | 'later';

const isThere = (reading: FlowEntry, limits: RinseLimits): boolean =>
  conductsAsSupply(reading, limits) === true && phFromSupply(reading, limits)?.isNear !== false;

/** Whether what was logged for a step since it was last gone back to is enough. */
function isEnough(step: FlowStep, entries: readonly FlowEntry[], ground: FlowGround): boolean {
  if (step.log === 'tests') return ground.isEveryTestMade;
  if (step.log === 'corrective aim') return ground.isAimAgreed;
  const own = entries.filter((entry) => entry.step === step.id);
  if (step.until === 'at supply') {
    const { limits } = ground;
    const last = own.slice(-limits.readingsInARow);
    return last.length === limits.readingsInARow && last.every((reading) => isThere(reading, limits));
  }
  return own.length > 0;
}

/** The entries that still count: an answer that leads back takes the later ones away. */
function counting(flow: Flow, log: readonly FlowEntry[]): readonly FlowEntry[] {
  let kept: readonly FlowEntry[] = [];
  for (const entry of log) {
    kept = [...kept, entry];
    const step = flow.steps.find(({ id }) => id === entry.step);
    const back = step?.choices?.find(({ id }) => id === entry.choice)?.back;
    if (back === undefined) continue;
    const from = flow.steps.findIndex(({ id }) => id === back);
    const before = flow.steps.slice(0, from).map(({ id }) => id);
    kept = kept.filter(({ step: done }) => before.includes(done));
  }
  return kept;
}

/**
 * How far a flow has come: each step done, at hand or later.
 *
 * @param flow - the flow
 * @param log - what was logged for it at one place, oldest first
 * @param ground - what it waits for elsewhere in the record
 * @returns the state of every step, in the flow's order
 * @source data/wash/flows.json, each row with its own source
 */
export function flowStates(
  flow: Flow,
  log: readonly FlowEntry[],
  ground: FlowGround,
): readonly { readonly step: FlowStep; readonly state: FlowState }[] {
  const entries = counting(flow, log);
  let isOpen = true;
  return flow.steps.map((step) => {
    if (!isOpen) return { step, state: 'later' as const };
    if (isEnough(step, entries, ground)) return { step, state: 'done' as const };
    isOpen = false;
    return { step, state: 'now' as const };
  });
}
