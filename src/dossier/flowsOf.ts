import {
  type Flow,
  type FlowGround,
  type FlowState,
  type FlowStep,
  flowStates,
  flows,
  missingDyeTests,
} from '../core/wash/index.ts';
import { findingsOf, planFactsOf, stainClassOf } from './planFacts.ts';
import type { Asked } from './rule/rule.ts';
import { latestVisit, type RugStanding, type VisitStanding } from './standing.ts';

/** A flow at one place of a rug, or over all of it, and how far it has come. */
export interface FlowAtPlace {
  readonly flow: Flow;
  readonly mark: string | undefined;
  readonly steps: readonly { readonly step: FlowStep; readonly state: FlowState }[];
  /** Whether anything was logged. */
  readonly isBegun: boolean;
}

type Settings = Pick<Asked, 'settings' | 'now'>;

const logOf = ({ flowLog }: VisitStanding, flow: string, mark: string | undefined) =>
  flowLog.filter((entry) => entry.flow === flow && entry.mark === mark);

/** Urine loosens dyes: only a test made there after the flush says anything. */
function isRetested(standing: RugStanding, visit: VisitStanding, mark: string | undefined): boolean {
  const flushed = logOf(visit, 'urine', mark).findLast(({ step }) => step === 'flush')?.when ?? '';
  const under = standing.marks.find((known) => known.mark === mark)?.colours;
  const colours = standing.colours.filter(
    ({ colour, atUrinePlace }) => under?.includes(colour) ?? atUrinePlace !== false,
  );
  return (
    colours.length > 0 &&
    colours.every(({ colour }) =>
      standing.dyeTests.some(
        (test) => test.colour === colour && test.atUrinePlace === true && test.when >= flushed,
      ),
    )
  );
}

function groundOf(
  standing: RugStanding,
  visit: VisitStanding,
  flow: Flow,
  mark: string | undefined,
  { settings, now }: Settings,
): FlowGround {
  const facts = planFactsOf(standing, settings, now);
  return {
    isEveryTestMade:
      flow.id === 'urine'
        ? isRetested(standing, visit, mark)
        : facts.ok && missingDyeTests(facts.value).every(({ blocksWetWork }) => !blocksWetWork),
    isAimAgreed: visit.correctiveAim !== null,
  };
}

function at(
  standing: RugStanding,
  visit: VisitStanding,
  flow: Flow,
  mark: string | undefined,
  asked: Settings,
): FlowAtPlace {
  const log = logOf(visit, flow.id, mark);
  const steps = flowStates(flow, log, groundOf(standing, visit, flow, mark, asked));
  return { flow, mark, steps, isBegun: log.length > 0 };
}

/**
 * The flows a rug calls for by its stains and findings, each at its place, and those begun by hand.
 *
 * @param standing - the rug's standing
 * @param asked - settings and instant
 * @source data/wash/flows.json, each row with its own source
 */
export function flowsOf(standing: RugStanding, asked: Settings): readonly FlowAtPlace[] {
  const visit = latestVisit(standing);
  if (visit === null) return [];
  const found = findingsOf(standing) ?? [];
  return flows.flatMap((flow) => {
    const marks = standing.marks.filter((mark) => {
      const stain = stainClassOf(standing, mark);
      return stain !== undefined && flow.stains?.includes(stain) === true;
    });
    const isFound = found.some(
      ({ code, certainty }) => flow.findings?.includes(code) === true && certainty !== 'ruled out',
    );
    const isBegun = visit.flowLog.some((entry) => entry.flow === flow.id && entry.mark === undefined);
    if (flow.perPlace) {
      const places = marks.map(({ mark }) => at(standing, visit, flow, mark, asked));
      return isBegun ? [...places, at(standing, visit, flow, undefined, asked)] : places;
    }
    return marks.length > 0 || isFound || isBegun ? [at(standing, visit, flow, undefined, asked)] : [];
  });
}

/** The step of a flow that is at hand at a place; null when it is through or there is no such flow. */
export function flowNow(
  standing: RugStanding,
  flow: string,
  mark: string | undefined,
  asked: Settings,
): FlowStep | null {
  const visit = latestVisit(standing);
  const known = flows.find(({ id }) => id === flow);
  if (visit === null || known === undefined) return null;
  const { steps } = at(standing, visit, known, mark, asked);
  return steps.find(({ state }) => state === 'now')?.step ?? null;
}
