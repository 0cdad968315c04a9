import type { ClientFact } from '../../src/dossier/clientFacts.ts';
import type { AnyFact, EntryDraft } from '../../src/dossier/entry.ts';
import type { RugFact } from '../../src/dossier/facts/index.ts';

const looks = ['medallion', 'garden', 'lattice', 'prayer', 'compartment', 'boteh', 'striped', 'hunting'];
const colours = ['madder', 'indigo', 'walnut', 'weld', 'ivory', 'camel', 'rose', 'green'];
const kinds = ['runner', 'saddlebag', 'carpet', 'kilim', 'cover', 'mat'];
const givenNames = ['Ada', 'Bela', 'Cato', 'Dilan', 'Emre', 'Farah', 'Goran', 'Hilde', 'Ines', 'Jonas'];
const syllables = ['ba', 'den', 'fir', 'gol', 'hav', 'kem', 'lor', 'mun', 'nes', 'pra', 'sil', 'tov', 'vel'];

const pick = (list: readonly string[], at: number): string => list[at % list.length] ?? '';

/** An invented person; a few thousand different family names. */
export function clientFact(at: number): ClientFact {
  const n = syllables.length;
  const family = [at, Math.floor(at / n), Math.floor(at / n / n)]
    .map((part) => pick(syllables, part))
    .join('');
  const name = `${pick(givenNames, at)} ${family.charAt(0).toUpperCase()}${family.slice(1)}`;
  return { type: 'ClientAdded', name, phone: `0${(1_000_000 + at).toString()}` };
}

export interface RugPlan {
  readonly number: number;
  readonly client: string;
  /** Ids for what the facts refer to. */
  readonly visit: string;
  readonly consignment: string;
  readonly inHouse: boolean;
}

/** The fact at some place of an invented dossier: taken in, then readings and notes, at last given back or not. */
export function rugFact(
  { number, client, visit, consignment, inHouse }: RugPlan,
  at: number,
  length: number,
): RugFact {
  const title = `${pick(colours, number)} ${pick(looks, Math.floor(number / 8))} ${pick(kinds, Math.floor(number / 64))}`;
  if (at === 0) return { type: 'DossierOpened', number: number + 1, title };
  if (at === 1) {
    return {
      ...{ type: 'RugReceived', visit, consignment, client, tag: `T${number % 10_000}`, scope: ['wash'] },
      ...{ route: 'rug in use', reason: 'yearly wash', authority: 'owner', place: `shelf ${number % 40}` },
    };
  }
  if (at === 2) {
    const [lengthsMm, widthsMm] = [[2400, 2410, 2405] as const, [1600, 1605, 1598] as const];
    return {
      ...{ type: 'RugMeasured', occasion: 'intake', shape: 'rectangle', uncertaintyMm: 5 },
      ...{ lengthsMm: [...lengthsMm], widthsMm: [...widthsMm] },
    };
  }
  if (at === length - 1 && !inHouse)
    return { type: 'VisitDeclined', reason: 'taken back unwashed', wishOf: 'client' };
  if (at % 3 === 0) {
    return {
      type: 'NoteAdded',
      note: `Looked at ${pick(looks, at)} corner ${at}, ${pick(colours, at)} holds, nothing to add.`,
    };
  }
  return at % 3 === 1
    ? { type: 'BathMeasured', ph: 6 + (at % 10) / 10, temperatureC: 24, runOff: 'clear', photos: [] }
    : {
        type: 'DryingReading',
        massKg: 9 + (at % 50) / 10,
        airRh: 0.45,
        airC: 24,
        touch: 'cool',
        pocketRh: 0.6,
        photos: [],
      };
}

/** A draft by somebody, at a time that grows with the place of the entry. */
export const draftOf = (stream: string, id: string, at: number, fact: AnyFact): EntryDraft => ({
  id,
  stream,
  at: new Date(Date.UTC(2026, 0, 1) + at * 60_000).toISOString(),
  by: '019aa000-0000-7000-8000-000000000001',
  version: 1,
  fact,
});
