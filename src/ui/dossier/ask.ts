import type {
  ColourKind,
  FindingCode,
  RequiredDyeTest,
  Side,
  Signatory,
  TestLiquid,
} from '../../core/wash/index.ts';
import type { RugFactOf } from '../../dossier/index.ts';
import type { About } from './identify/claimWords.ts';

export type OverrideRule = RugFactOf<'OverrideGranted'>['rule'];

/** One blot of the matrix. */
export interface BlotPlace {
  readonly colour: string;
  readonly side: Side;
  readonly liquid: TestLiquid;
  readonly atUrinePlace: boolean;
  /** The conditions asked for, where the plan asks for this blot. */
  readonly required?: RequiredDyeTest | undefined;
}

/** A sheet that something on the page asks for. */
export type Ask =
  | { readonly kind: 'measure' | 'weigh' | 'survey' }
  | { readonly kind: 'claim'; readonly about: About }
  | { readonly kind: 'look over' }
  | { readonly kind: 'finding'; readonly finding: FindingCode }
  | { readonly kind: 'foundation' }
  | { readonly kind: 'colour'; readonly colour: string | null; readonly on?: ColourKind }
  | { readonly kind: 'knots' | 'knots on photographs' }
  | { readonly kind: 'blot'; readonly place: BlotPlace }
  | { readonly kind: 'test refused'; readonly colour: string }
  | { readonly kind: 'drying hours' | 'corrective aim' | 'plan on record' | 'planned bath' }
  | { readonly kind: 'override'; readonly rule: OverrideRule }
  | { readonly kind: 'sign-off'; readonly who: Signatory }
  | { readonly kind: 'consent' | 'consent refused' | 'consent withdrawn' }
  | { readonly kind: 'note' | 'move' | 'quarantine' | 'release' | 'incident' }
  | { readonly kind: 'sign receipt' }
  | { readonly kind: 'incident told'; readonly incident: string }
  | { readonly kind: 'send out' | 'came back' | 'storage' | 'unclaimed' | 'dust' }
  | { readonly kind: 'withdraw'; readonly entry: string };
