import type { RugFactOf } from '../../dossier/index.ts';
import type { RugDesign } from '../paint/rugDesign.ts';
import type { Moment } from './moment.ts';
import type { DemoClient } from './people.ts';

export interface DemoRug {
  readonly title: string;
  readonly tag: string;
  readonly client: DemoClient;
  /** Rugs with the same word came together. */
  readonly consignment: string;
  readonly receivedHoursAgo: number;
  readonly received: Partial<
    Omit<RugFactOf<'RugReceived'>, 'type' | 'tag' | 'client' | 'visit' | 'consignment'>
  >;
  /** The promised day, counted in days from the demo's opening. */
  readonly promisedInDays?: number;
  readonly design: RugDesign;
  readonly story: readonly Moment[];
}

/** A mark of the condition list, drawn where the design has its trouble. */
export const marked = (
  mark: string,
  word: string,
  at: { readonly xMm: number; readonly yMm: number; readonly sizeMm: number },
  grade: 0 | 1 | 2 | 3 | 4,
  more: Partial<RugFactOf<'MarkRecorded'>> = {},
): RugFactOf<'MarkRecorded'> => {
  const r = at.sizeMm / 2;
  const corners = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ] as const;
  return {
    type: 'MarkRecorded',
    mark,
    word,
    side: 'face',
    shape: 'polygon',
    pointsMm: corners.map(([x, y]) => ({ xMm: at.xMm + x * r, yMm: at.yMm + y * r })),
    grade,
    areaCm2: Math.round((at.sizeMm * at.sizeMm) / 100),
    activity: 'stable',
    photos: [],
    ...more,
  };
};
