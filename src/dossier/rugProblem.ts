import type { AgentForbidden, BathPhOutside, MixtureForbidden } from '../core/wash/index.ts';
import type { OutOfRange, Problem } from '../units/index.ts';
import type { DryCriterion } from './dryStandard.ts';
import type { WashNotAllowed, WetBlocker } from './mayWet.ts';
import type { SizeNotMeasured } from './planFacts.ts';
import type { Role } from './workshopFacts.ts';

type Nothing = Readonly<Record<string, never>>;

/** Why the hand-back must wait. */
export type ReturnObstacle = 'not-inspected' | 'not-dry' | 'quarantined' | 'is-out' | 'stop-not-cleared';

/** Everything the record may refuse for a rug. */
export type RugProblem =
  | OutOfRange
  | Problem<'card-other-tag', { readonly found: string; readonly expected: string }>
  | Problem<'count-not-confirmed', { readonly place: string }>
  | WetBlocker
  | WashNotAllowed
  | SizeNotMeasured
  | Problem<'dossier-open-already', { readonly number: number }>
  | Problem<'dossier-not-open', Nothing>
  | Problem<'visit-under-way', { readonly tag: string }>
  | Problem<'no-visit', { readonly type: string }>
  | Problem<'before-receipt', { readonly happenedAt: string; readonly receivedAt: string }>
  | Problem<'in-the-future', { readonly happenedAt: string; readonly now: string }>
  | Problem<'role-missing', { readonly needs: readonly Role[]; readonly type: string }>
  | Problem<'sizes-disagree', { readonly which: 'lengths' | 'widths'; readonly valuesMm: readonly number[] }>
  | Problem<
      'mass-outside-band',
      {
        readonly massKg: number;
        readonly areaM2: number;
        readonly construction: string;
        readonly leastKg: number;
        readonly mostKg: number;
      }
    >
  | Problem<'mark-points-wrong', { readonly shape: string; readonly points: number; readonly needed: number }>
  | Problem<
      'mark-outside-rug',
      { readonly xMm: number; readonly yMm: number; readonly widthMm: number; readonly lengthMm: number }
    >
  | Problem<'mark-word-unknown', { readonly word: string }>
  | Problem<'blend-not-whole', { readonly sum: number }>
  | Problem<'years-reversed', { readonly fromYear: number; readonly untilYear: number }>
  | Problem<'colour-not-named', { readonly colour: string }>
  | Problem<'control-stained', { readonly control: string }>
  | Problem<'test-without-minutes', { readonly liquid: string }>
  | Problem<'measured-without-photograph', Nothing>
  | Problem<
      'measured-figures-disagree',
      { readonly figure: string; readonly given: string; readonly expected: string }
    >
  | Problem<'picture-of-another-rug', { readonly photo: string }>
  | Problem<'pictures-swapped', { readonly beforeAt: string; readonly afterAt: string }>
  | MixtureForbidden
  | AgentForbidden
  | BathPhOutside
  | Problem<'bath-not-planned', { readonly bath: string }>
  | Problem<'plan-not-current', Nothing>
  | Problem<'currency-differs', { readonly given: string; readonly expected: string }>
  | Problem<
      'ceiling-below-sum',
      { readonly sumMinor: number; readonly notToExceedMinor: number; readonly currency: string }
    >
  | Problem<'nothing-quoted', Nothing>
  | Problem<'rule-not-overridable', { readonly rule: string }>
  | Problem<'rule-does-not-hold', { readonly rule: string; readonly about: readonly string[] }>
  | Problem<'step-not-planned', { readonly step: string }>
  | Problem<'step-wets', { readonly step: string }>
  | Problem<'step-not-started', { readonly step: string }>
  | Problem<'agent-not-on-shelf', { readonly agent: string }>
  | Problem<'agent-off-shelf', { readonly agent: string; readonly name: string; readonly why: string }>
  | Problem<'lot-unknown', { readonly name: string; readonly lot: string; readonly known: readonly string[] }>
  | Problem<'lot-expired', { readonly name: string; readonly lot: string; readonly expires: string }>
  | Problem<'step-under-way', { readonly step: string }>
  | Problem<'too-few-people', { readonly needed: number }>
  | Problem<'dwell-not-over', { readonly step: string; readonly minutesLeft: number }>
  | Problem<
      'residue-forbidden',
      {
        readonly what: string;
        readonly rule: string;
        readonly residues: readonly string[];
        readonly hazard: string;
        readonly clear: readonly string[];
      }
    >
  | Problem<'stain-unknown', { readonly mark: string }>
  | Problem<'residue-not-carried', { readonly agent: string }>
  | Problem<'stain-answer-unknown', { readonly question: string; readonly answer: string }>
  | Problem<'agent-not-planned', { readonly agents: readonly string[]; readonly planned: readonly string[] }>
  | Problem<
      'flow-step-not-next',
      { readonly flow: string; readonly step: string; readonly next: string | null }
    >
  | Problem<'flow-unknown', { readonly flow: string; readonly known: readonly string[] }>
  | Problem<'flow-there-already', { readonly flow: string }>
  | Problem<'flow-before-wet-step', { readonly flow: string; readonly step: string }>
  | Problem<'stop-stands-on-reading', { readonly condition: string }>
  | Problem<'nothing-measured', Nothing>
  | Problem<'stop-unknown', { readonly stop: string }>
  | Problem<'drying-hours-need-owner', Nothing>
  | Problem<'drying-not-started', Nothing>
  | Problem<'dry-standard-unmet', { readonly standard: string; readonly unmet: readonly DryCriterion[] }>
  | Problem<'dry-standard-not-chosen', { readonly standard: string; readonly workshops: string }>
  | Problem<'posture-not-allowed', { readonly posture: string; readonly limit: string }>
  | Problem<'marks-not-inspected', { readonly marks: readonly string[] }>
  | Problem<'not-ready-to-return', { readonly obstacles: readonly ReturnObstacle[] }>
  | Problem<'identity-differs', { readonly which: readonly string[] }>
  | Problem<'work-declined', { readonly type: string }>
  | Problem<'quarantined-goes-home', { readonly why: string }>
  | Problem<
      'day-not-possible',
      {
        readonly what: 'back by' | 'storage' | 'unclaimed';
        readonly day: string;
        readonly from: string;
        readonly until: string | null;
      }
    >
  | Problem<'incident-unknown', { readonly incident: string }>
  | Problem<'wet-rug-stays', { readonly since: string }>
  | Problem<'not-quarantined', Nothing>
  | Problem<'not-out', Nothing>
  | Problem<'entry-unknown', { readonly entry: string }>
  | Problem<'entry-withdrawn-already', { readonly entry: string }>
  | Problem<'entry-not-withdrawable', { readonly entry: string; readonly type: string }>;
