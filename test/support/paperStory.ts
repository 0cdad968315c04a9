import {
  type ClientFact,
  clientStanding,
  type Entry,
  type RugEntry,
  type RugFact,
  standingOf,
  type WorkshopFact,
  workshopStanding,
} from '../../src/dossier/index.ts';
import type { PaperContext } from '../../src/papers/index.ts';
import { rangeText } from '../../src/text/amountText.ts';
import { dryAskedWords, dryFoundWords } from '../../src/text/dryWords.ts';
import { assumedWaterWords, bathAcidWords, mixLineWords } from '../../src/text/mixWords.ts';
import { problemWords } from '../../src/text/problemWords.ts';
import { shelfGapWords } from '../../src/text/shelfGapWords.ts';
import { atHour, clientTold, intakeTold, type Told, workshopTold } from './paperTold.ts';

const seal = (revision: number): string => (0x9f2c0000 + revision).toString(16).padStart(8, '0').repeat(8);

export const entriesOf = <Fact extends { readonly type: string }>(
  stream: string,
  by: string,
  told: readonly Told<Fact>[],
): readonly Entry<Fact>[] =>
  told.map(([hour, fact], at) => ({
    id: `${stream.replace('/', '-')}-${at + 1}`,
    stream,
    revision: at + 1,
    at: atHour(hour),
    by,
    version: 1,
    fact,
    seal: seal(at + 1),
  }));

export interface StoryChanges {
  readonly told?: readonly Told<RugFact>[];
  readonly client?: readonly Told<ClientFact>[] | 'erased' | 'nobody';
  readonly workshop?: readonly Told<WorkshopFact>[];
  readonly hour?: number;
}

/** The context of a paper made from what was told, at an hour after all of it. */
export function paperContextOf({
  told = intakeTold,
  client = clientTold,
  workshop = workshopTold,
  hour,
}: StoryChanges = {}): PaperContext {
  const entries = entriesOf('rug/rug-1', 'mirela', told) as readonly RugEntry[];
  const rug = standingOf(entries);
  const visit = rug.visits.at(-1);
  if (visit === undefined) throw new Error('the story has no visit');
  const last = Math.max(...told.map(([at]) => at));
  return {
    issuedAt: atHour(hour ?? last + 1),
    by: 'mirela',
    timeZone: 'Europe/Vienna',
    workshop: workshopStanding(entriesOf('workshop', 'mirela', workshop)),
    client:
      client === 'erased'
        ? { kind: 'erased' }
        : client === 'nobody'
          ? null
          : clientStanding(entriesOf('client/client-1', 'mirela', client)),
    rug,
    visit,
    consignment: [{ rug, visit }],
    entries,
    words: {
      ...{ problem: problemWords, dryAsked: (code) => dryAskedWords[code], dryFound: dryFoundWords },
      ...{
        mixLine: mixLineWords,
        assumedWater: assumedWaterWords,
        bathAcid: bathAcidWords,
        measuredOut: rangeText,
      },
      shelfGap: (gap) => shelfGapWords(gap, false),
    },
  };
}
