import type { PlanStep, RequiredDyeTest } from '../core/wash/index.ts';
import type { ShelfGap } from './shelfGaps.ts';
import type { BrokenBand } from './stopsRaised.ts';
import type { WorkshopSettings } from './workshopFacts.ts';

/** How soon hands are needed; `waiting` is for a person outside the workshop. */
export type Urgency = 'now' | 'soon' | 'later' | 'waiting';

/** What is to be done, as a code with its facts; the words are in text/nextStepWords.ts. */
export type Deed =
  | {
      readonly code: 'resolve-stop';
      readonly stop: string;
      readonly condition: string;
      /** The reading behind it and the band it broke, to be told in the workshop's units. */
      readonly broke?: BrokenBand;
      readonly units: WorkshopSettings['units'];
    }
  | { readonly code: 'end-dwell'; readonly step: string; readonly kind: PlanStep['kind'] }
  | { readonly code: 'finish-step'; readonly step: string; readonly kind: PlanStep['kind'] }
  | { readonly code: 'start-step'; readonly step: string; readonly kind: PlanStep['kind'] }
  | { readonly code: 'mend-shelf'; readonly gap: ShelfGap; readonly more: number; readonly isWet: boolean }
  | { readonly code: 'read-blot'; readonly colour: string; readonly liquid: string }
  | { readonly code: 'start-drying' }
  | { readonly code: 'take-drying-reading'; readonly wetHours: number }
  | { readonly code: 'accept-dry' }
  | { readonly code: 'release-quarantine'; readonly why: string }
  | { readonly code: 'fetch-back'; readonly from: string }
  | { readonly code: 'measure' }
  | { readonly code: 'survey-condition' }
  | { readonly code: 'identify'; readonly missing: readonly string[] }
  | { readonly code: 'weigh' }
  | { readonly code: 'name-colours' }
  | { readonly code: 'test-dye'; readonly test: RequiredDyeTest; readonly more: number }
  | { readonly code: 'enter-drying-hours' }
  | { readonly code: 'forecast-drying' }
  | { readonly code: 'turn-rug' }
  | { readonly code: 'resolve-plan' }
  | { readonly code: 'agree-plan'; readonly again: boolean }
  | { readonly code: 'sign-off'; readonly who: readonly string[] }
  | { readonly code: 'quote-price' }
  | { readonly code: 'ask-consent'; readonly again: boolean }
  | { readonly code: 'settle-refusal' }
  | { readonly code: 'do-the-work'; readonly scope: readonly string[] }
  | { readonly code: 'inspect' }
  | { readonly code: 'hand-back' }
  | { readonly code: 'receive-again' };

export interface NextStep {
  readonly deed: Deed;
  readonly urgency: Urgency;
  /** Instant from which it waits, or at which it falls due. */
  readonly dueAt: string | null;
}
