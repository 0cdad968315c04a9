import {
  type Flow,
  type FlowGround,
  type FlowState,
  type FlowStep,
  flowStates,
  missingDyeTests,
} from '../core/wash/index.ts';
import { findingsOf, planFactsOf, stainClassOf } from './planFacts.ts';
import type { Asked } from './rule/rule.ts';
import { rulebookOf } from './rulebook.ts';
import { latestVisit, type Noted, type RugStanding, type VisitStanding } from './standing.ts';

/** A flow at one place of a rug, or over all of it, and how far it has come. */
export interface FlowAtPlace {
  readonly flow: Flow;
  readonly mark: string | undefined;
  readonly steps: readonly { readonly step: FlowStep; readonly state: FlowState }[];
  /** Who began it by hand, where and why; null where the record calls for it by itself. */
  readonly begun: Noted<'FlowBegun'> | null;
}

type Settings = Pick<Asked, 'settings' | 'now'>;

const logOf = ({ flowLog }: VisitStanding, flow: string, mark: string | undefined) =>
  flowLog.filter((entry) => entry.flow === flow && entry.mark === mark);

/** A flow over the whole rug may have been begun at a mark; that is where it was seen. */
const beginningOf = ({ flowsBegun }: VisitStanding, flow: Flow, mark: string | undefined) =>
  flowsBegun.find((one) => one.flow === flow.id && (!flow.perPlace || one.mark === mark));

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
    limits: rulebookOf(settings).residues,
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
  return { flow, mark, steps, begun: beginningOf(visit, flow, mark) ?? null };
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
  return rulebookOf(asked.settings).flows.flatMap((flow) => {
    const marks = standing.marks.filter((mark) => {
      const stain = stainClassOf(standing, mark);
      return stain !== undefined && flow.stains?.includes(stain) === true;
    });
    const isFound = found.some(
      ({ code, certainty }) => flow.findings?.includes(code) === true && certainty !== 'ruled out',
    );
    const isBegun =
      beginningOf(visit, flow, undefined) !== undefined ||
      visit.flowLog.some((entry) => entry.flow === flow.id && entry.mark === undefined);
    if (!flow.perPlace) {
      return marks.length > 0 || isFound || isBegun ? [at(standing, visit, flow, undefined, asked)] : [];
    }
    const byHand = standing.marks.filter(
      (mark) => !marks.includes(mark) && beginningOf(visit, flow, mark.mark) !== undefined,
    );
    const places = [...marks, ...byHand].map(({ mark }) => at(standing, visit, flow, mark, asked));
    // What was found and drawn nowhere has its place still to be found.
    const isUnplaced = isBegun || (isFound && places.length === 0);
    return isUnplaced ? [...places, at(standing, visit, flow, undefined, asked)] : places;
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
  const known = rulebookOf(asked.settings).flows.find(({ id }) => id === flow);
  if (visit === null || known === undefined) return null;
  const { steps } = at(standing, visit, known, mark, asked);
  return steps.find(({ state }) => state === 'now')?.step ?? null;
}
