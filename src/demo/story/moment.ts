import type { RugFact, RugStanding, WorkshopSettings } from '../../dossier/index.ts';

/** What a story may look at when a fact depends on what came before it. */
export interface View {
  readonly standing: RugStanding;
  readonly settings: WorkshopSettings;
  readonly now: string;
}

export type DemoPerson = 'mirela' | 'tobin' | 'ines';

/** Facts recorded together by one person, so many hours before the demo is opened. */
export interface Moment {
  readonly hoursAgo: number;
  readonly by: DemoPerson;
  readonly facts: readonly (RugFact | ((view: View) => RugFact | null))[];
}

export const moment = (hoursAgo: number, by: DemoPerson, ...facts: Moment['facts']): Moment => ({
  hoursAgo,
  by,
  facts,
});
