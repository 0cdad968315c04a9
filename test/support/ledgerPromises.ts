import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { uuidv7 } from '../../src/adapters/clock/uuidv7.ts';
import type { EntryDraft } from '../../src/dossier/entry.ts';
import { canonicalJson, sealOf } from '../../src/dossier/seal.ts';
import { searchWords } from '../../src/dossier/searchWords.ts';
import type { Ledger, ListQuery, ListRow, ListRowOf } from '../../src/ports/ledger.ts';
import { type NoteFact, rowOfNotes } from './rowOfNote.ts';

const ids = uuidv7();

/** A note on its way into a stream. */
export function note(stream: string, text: string, more: Partial<NoteFact> = {}): EntryDraft<NoteFact> {
  return {
    id: ids.next(),
    stream,
    at: '2026-11-25T09:00:00.000Z',
    by: 'person-1',
    version: 1,
    fact: { type: 'NoteAdded', text, ...more },
  };
}

/** Appends that must succeed. */
export async function recorded(ledger: Ledger, ...batch: Parameters<Ledger['append']>[0]) {
  const answer = await ledger.append(batch);
  if (!answer.ok) throw new Error(`refused: ${JSON.stringify(answer.problem)}`);
  return answer.value;
}

export interface LedgerUnderTest {
  readonly ledger: Ledger;
  readonly done: () => Promise<void>;
}

/** What every ledger promises, whatever it stands on. */
export function ledgerPromises(name: string, open: (listRowOf: ListRowOf) => Promise<LedgerUnderTest>): void {
  describe(`${name} keeps the promises of a ledger:`, () => {
    let ledger: Ledger;
    let close: () => Promise<void>;
    const opened = async () => {
      const under = await open(rowOfNotes);
      ledger = under.ledger;
      close = under.done;
    };
    beforeEach(opened);
    afterEach(() => close());

    test('what was recorded is read back, in order, under revisions without a gap', async () => {
      await recorded(ledger, { stream: 'rug/a', expectedRevision: 0, drafts: [note('rug/a', 'one')] });
      const drafts = [note('rug/a', 'two'), note('rug/a', 'three')];
      const answered = await recorded(ledger, { stream: 'rug/a', expectedRevision: 1, drafts });
      const entries = await ledger.read('rug/a');
      expect(entries.map(({ revision }) => revision)).toEqual([1, 2, 3]);
      expect(entries.map(({ fact }) => (fact as NoteFact).text)).toEqual(['one', 'two', 'three']);
      expect(answered).toEqual(entries.slice(1));
      expect(await ledger.head('rug/a')).toEqual({ revision: 3, seal: entries[2]?.seal });
    });

    test('a stream that nobody wrote is empty, at revision 0 and without a seal', async () => {
      expect(await ledger.read('rug/none')).toEqual([]);
      expect(await ledger.head('rug/none')).toEqual({ revision: 0, seal: '' });
      expect(await ledger.streams('rug')).toEqual([]);
    });

    test('each seal is over the entry and the seal before it, so that anyone can check a dossier alone', async () => {
      const drafts = ['one', 'Ölçü ۵ “ ” \u2028 🧶', '\ud800 alone'].map((text) => note('rug/a', text));
      const entries = await recorded(ledger, { stream: 'rug/a', expectedRevision: 0, drafts });
      let before = '';
      for (const entry of entries) {
        expect(entry.seal).toBe(sealOf(entry, before));
        before = entry.seal;
      }
      expect((await ledger.verify('rug/a')).broken).toEqual([]);
    });

    test('two tablets on one revision: the second is told that the stream moved on', async () => {
      const [first, second] = await Promise.all(
        ['left', 'right'].map((text) =>
          ledger.append([{ stream: 'rug/a', expectedRevision: 0, drafts: [note('rug/a', text)] }]),
        ),
      );
      expect(first?.ok).toBe(true);
      expect(second).toEqual({
        ok: false,
        problem: {
          code: 'stream-moved-on',
          facts: { stream: 'rug/a', expectedRevision: 0, actualRevision: 1 },
        },
      });
      expect(await ledger.read('rug/a')).toHaveLength(1);
    });

    test('several streams are recorded all or none', async () => {
      await recorded(ledger, { stream: 'rug/b', expectedRevision: 0, drafts: [note('rug/b', 'here')] });
      const refusedBatch = await ledger.append([
        { stream: 'rug/a', expectedRevision: 0, drafts: [note('rug/a', 'new')] },
        { stream: 'client/c', expectedRevision: 0, drafts: [note('client/c', 'new')] },
        { stream: 'rug/b', expectedRevision: 0, drafts: [note('rug/b', 'late')] },
      ]);
      expect(refusedBatch.ok).toBe(false);
      expect(await ledger.read('rug/a')).toEqual([]);
      expect(await ledger.read('client/c')).toEqual([]);
      expect(await ledger.list({ kind: 'rug', find: 'new', limit: 10 })).toEqual([]);
      const both = await recorded(
        ledger,
        { stream: 'rug/a', expectedRevision: 0, drafts: [note('rug/a', 'new')] },
        { stream: 'rug/b', expectedRevision: 1, drafts: [note('rug/b', 'now')] },
      );
      expect(both.map(({ stream, revision }) => [stream, revision])).toEqual([
        ['rug/a', 1],
        ['rug/b', 2],
      ]);
    });

    test('the same draft twice is recorded once and answered alike, even later and at an old revision', async () => {
      const draft = note('rug/a', 'sent twice');
      const once = { stream: 'rug/a', expectedRevision: 0, drafts: [draft] };
      const first = await recorded(ledger, once);
      await recorded(ledger, { stream: 'rug/a', expectedRevision: 1, drafts: [note('rug/a', 'between')] });
      expect(await recorded(ledger, once)).toEqual(first);
      expect(await recorded(ledger, { ...once, drafts: [draft, draft] })).toEqual([...first, ...first]);
      expect(await ledger.read('rug/a')).toHaveLength(2);
    });

    test('a retry with something new in it counts as new, and is recorded once it knows the revision', async () => {
      const draft = note('rug/a', 'known');
      await recorded(ledger, { stream: 'rug/a', expectedRevision: 0, drafts: [draft] });
      const mixed = { stream: 'rug/a', expectedRevision: 0, drafts: [draft, note('rug/a', 'new')] };
      expect((await ledger.append([mixed])).ok).toBe(false);
      const answered = await recorded(ledger, { ...mixed, expectedRevision: 1 });
      expect(answered.map(({ revision }) => revision)).toEqual([1, 2]);
    });

    test('the same id in two streams is two entries', async () => {
      const draft = note('rug/a', 'same id');
      await recorded(
        ledger,
        { stream: 'rug/a', expectedRevision: 0, drafts: [draft] },
        { stream: 'rug/b', expectedRevision: 0, drafts: [{ ...draft, stream: 'rug/b' }] },
      );
      expect(await ledger.read('rug/b')).toHaveLength(1);
    });

    test('an append without drafts only asks whether the stream is where one thinks', async () => {
      await recorded(ledger, { stream: 'rug/a', expectedRevision: 0, drafts: [note('rug/a', 'one')] });
      expect((await ledger.append([{ stream: 'rug/a', expectedRevision: 1, drafts: [] }])).ok).toBe(true);
      expect((await ledger.append([{ stream: 'rug/a', expectedRevision: 0, drafts: [] }])).ok).toBe(false);
    });

    test('a fact that JSON cannot hold is a bug, and leaves nothing behind', async () => {
      const bad = note('rug/a', 'bad', { weightKg: Number.NaN } as Partial<NoteFact>);
      const good = { stream: 'rug/b', expectedRevision: 0, drafts: [note('rug/b', 'beside it')] };
      const answers = await Promise.allSettled([
        ledger.append([{ stream: 'rug/a', expectedRevision: 0, drafts: [bad] }]),
        ledger.append([good]),
      ]);
      expect(answers.map(({ status }) => status)).toEqual(['rejected', 'fulfilled']);
      expect(await ledger.read('rug/a')).toEqual([]);
      expect(await ledger.read('rug/b')).toHaveLength(1);
      expect((await ledger.verify()).broken).toEqual([]);
    });

    test('a note of a megabyte comes back whole', async () => {
      const long = '\u{1F9F6}é'.repeat(175_000);
      await recorded(ledger, { stream: 'rug/a', expectedRevision: 0, drafts: [note('rug/a', long)] });
      expect((await ledger.read('rug/a')).map(({ fact }) => (fact as NoteFact).text)).toEqual([long]);
    });

    test('any text and any JSON comes back as it went in', async () => {
      await fc.assert(
        fc.asyncProperty(fc.string({ unit: 'binary' }), fc.jsonValue(), async (text, more) => {
          const stream = `room/${ids.next()}`;
          const draft = note(stream, text, { more } as Partial<NoteFact>);
          await recorded(ledger, { stream, expectedRevision: 0, drafts: [draft] });
          const [entry] = await ledger.read(stream);
          expect(canonicalJson(entry?.fact)).toBe(canonicalJson(draft.fact));
          expect(entry?.seal).toBe(sealOf({ ...draft, revision: 1 }, ''));
        }),
        { numRuns: 60 },
      );
    });

    test('whatever is appended by many hands at once, revisions have no gap and every seal holds', async () => {
      const stream = fc.constantFrom('rug/a', 'rug/b', 'client/c', 'room/d', 'workshop');
      const act = fc.record({ stream, belief: fc.nat(4), size: fc.integer({ min: 1, max: 3 }) });
      await fc.assert(
        fc.asyncProperty(fc.array(fc.array(act, { maxLength: 6 }), { maxLength: 6 }), async (rounds) => {
          await close();
          await opened();
          const kept: string[] = [];
          for (const round of rounds) {
            const answers = await Promise.all(
              round.map(({ stream, belief, size }) =>
                ledger.append([
                  {
                    stream,
                    expectedRevision: belief,
                    drafts: Array.from({ length: size }, () => note(stream, 'x')),
                  },
                ]),
              ),
            );
            kept.push(...answers.flatMap((answer) => (answer.ok ? answer.value.map(({ id }) => id) : [])));
          }
          const found: string[] = [];
          for (const kind of ['rug', 'client', 'room', 'workshop'] as const) {
            for (const name of await ledger.streams(kind)) {
              const entries = await ledger.read(name);
              expect(entries.map(({ revision }) => revision)).toEqual(entries.map((_, at) => at + 1));
              found.push(...entries.map(({ id }) => id));
            }
          }
          expect(found.sort()).toEqual(kept.sort());
          const { broken, entries } = await ledger.verify();
          expect(broken).toEqual([]);
          expect(entries).toBe(kept.length);
        }),
        { numRuns: 15 },
      );
    });

    test('streams are named in the order in which they began', async () => {
      for (const stream of ['rug/z', 'room/q', 'rug/a', 'workshop', 'client/k']) {
        await recorded(ledger, { stream, expectedRevision: 0, drafts: [note(stream, 'begun')] });
      }
      expect(await ledger.streams('rug')).toEqual(['rug/z', 'rug/a']);
      expect(await ledger.streams('workshop')).toEqual(['workshop']);
      expect((await ledger.verify()).streams).toBe(5);
    });

    test('a rug is found by tag, stage, place, house, by beginnings of words, and by its client', async () => {
      await recorded(
        ledger,
        { stream: 'client/k', expectedRevision: 0, drafts: [note('client/k', 'Zeynep Çelebi')] },
        {
          stream: 'rug/a',
          expectedRevision: 0,
          drafts: [
            note('rug/a', 'red medallion', {
              tag: 'T-7',
              client: 'k',
              stage: 'tested',
              place: 'floor',
              inHouse: true,
            }),
          ],
        },
        {
          stream: 'rug/b',
          expectedRevision: 0,
          drafts: [note('rug/b', 'red border', { tag: 'T-8', inHouse: false })],
        },
      );
      const found = async (query: Partial<ListQuery>) =>
        (await ledger.list({ kind: 'rug', limit: 10, ...query })).map(({ stream }) => stream);
      expect(await found({})).toEqual(['rug/b', 'rug/a']);
      expect(await found({ tag: 'T-7' })).toEqual(['rug/a']);
      expect(await found({ client: 'k' })).toEqual(['rug/a']);
      expect(await found({ stage: 'tested', place: 'floor', inHouse: true })).toEqual(['rug/a']);
      expect(await found({ inHouse: false })).toEqual(['rug/b']);
      expect(await found({ find: 'RED med' })).toEqual(['rug/a']);
      expect(await found({ find: 'edallion' })).toEqual([]);
      expect(await found({ find: 'celebi' })).toEqual(['rug/a']);
      expect(await found({ find: 'Zeynep, red' })).toEqual(['rug/a']);
      expect(await found({ find: '  !? ' })).toEqual(['rug/b', 'rug/a']);
      expect(await found({ limit: 1 })).toEqual(['rug/b']);
      expect(await found({ limit: 1, after: 'rug/b' })).toEqual(['rug/a']);
      expect((await ledger.list({ kind: 'client', find: 'çel', limit: 5 })).map(({ body }) => body)).toEqual([
        { notes: 1, newest: 'Zeynep Çelebi' },
      ]);
    });

    test('a list agrees with looking at every row', async () => {
      const word = fc.constantFrom('red', 'redder', 'rose', 'Blue', 'wool');
      const place = fc.constantFrom('floor', 'shelf');
      const rug = fc.record({
        words: fc.array(word, { maxLength: 3 }),
        place,
        client: fc.constantFrom('k', 'l'),
      });
      const query = fc.record(
        {
          find: fc.constantFrom('re', 'r wo', 'blue', 'ann', 'b red'),
          place,
          client: fc.constantFrom('k', 'l'),
        },
        { requiredKeys: [] },
      );
      const rugs = fc.sample(rug, { numRuns: 40, seed: 7 });
      const names: Record<string, string> = { k: 'Anna Rossa', l: 'Bo Wool' };
      for (const [client, name] of Object.entries(names)) {
        const stream = `client/${client}`;
        await recorded(ledger, { stream, expectedRevision: 0, drafts: [note(stream, name)] });
      }
      for (const [at, { words, ...columns }] of rugs.entries()) {
        const stream = `rug/${at}`;
        const drafts = [note(stream, words.join(' '), columns)];
        await recorded(ledger, { stream, expectedRevision: 0, drafts });
      }
      await fc.assert(
        fc.asyncProperty(query, fc.integer({ min: 1, max: 50 }), async (asked, limit) => {
          const fits = ({ words, place, client }: (typeof rugs)[number]) =>
            (asked.place === undefined || place === asked.place) &&
            (asked.client === undefined || client === asked.client) &&
            searchWords(asked.find ?? '').every((prefix) =>
              searchWords(...words, names[client] ?? '').some((each) => each.startsWith(prefix)),
            );
          const expected = rugs
            .flatMap((each, at) => (fits(each) ? [`rug/${at}`] : []))
            .reverse()
            .slice(0, limit);
          const rows = await ledger.list({ kind: 'rug', limit, ...asked });
          expect(rows.map(({ stream }) => stream)).toEqual(expected);
        }),
      );
    });

    test('rows made anew equal the rows that were kept', async () => {
      for (const at of Array.from({ length: 20 }, (_, index) => index)) {
        const stream = `${at % 3 === 0 ? 'client' : 'rug'}/${at}`;
        await recorded(ledger, { stream, expectedRevision: 0, drafts: [note(stream, `first ${at}`)] });
        await recorded(ledger, {
          stream,
          expectedRevision: 1,
          drafts: [note(stream, `second ${at}`, { tag: `T${at}` })],
        });
      }
      const rows = async (): Promise<readonly ListRow[]> => [
        ...(await ledger.list({ kind: 'rug', limit: 100 })),
        ...(await ledger.list({ kind: 'client', limit: 100 })),
      ];
      const kept = canonicalJson(await rows());
      expect(await ledger.rebuild()).toEqual({ rows: 13 });
      expect(canonicalJson(await rows())).toBe(kept);
    });

    test('an erased client can never be read or found again; entries and seals stay', async () => {
      await recorded(
        ledger,
        { stream: 'client/k', expectedRevision: 0, drafts: [note('client/k', 'Zeynep Çelebi')] },
        { stream: 'rug/a', expectedRevision: 0, drafts: [note('rug/a', 'red', { client: 'k' })] },
      );
      const before = await ledger.read('client/k');
      expect(before.map(({ fact }) => (fact as NoteFact).text)).toEqual(['Zeynep Çelebi']);
      await ledger.eraseClient('client/k');
      const after = await ledger.read('client/k');
      expect(after).toEqual(before.map((entry) => ({ ...entry, fact: { type: 'ClientErased' } })));
      expect(await ledger.list({ kind: 'rug', find: 'zeynep', limit: 5 })).toEqual([]);
      expect(await ledger.list({ kind: 'client', find: 'zeynep', limit: 5 })).toEqual([]);
      expect((await ledger.verify()).broken).toEqual([]);
      const late = { stream: 'client/k', expectedRevision: 1, drafts: [note('client/k', 'again')] };
      expect(await ledger.append([late])).toEqual({
        ok: false,
        problem: { code: 'client-erased', facts: { stream: 'client/k' } },
      });
    });

    test('erasing a client that is not there, or twice, does nothing', async () => {
      await ledger.eraseClient('client/none');
      const drafts = [note('client/none', 'now here')];
      await recorded(ledger, { stream: 'client/none', expectedRevision: 0, drafts });
      await ledger.eraseClient('client/none');
      await ledger.eraseClient('client/none');
      expect((await ledger.verify()).broken).toEqual([]);
    });

    test('listeners hear which streams moved, once it is recorded, and not after they stopped', async () => {
      const heard: (readonly string[])[] = [];
      const stop = ledger.onAppend((streams) => heard.push(streams));
      const once = { stream: 'rug/a', expectedRevision: 0, drafts: [note('rug/a', 'one')] };
      await recorded(ledger, once);
      await recorded(ledger, once);
      await ledger.append([{ stream: 'rug/a', expectedRevision: 0, drafts: [note('rug/a', 'refused')] }]);
      stop();
      await recorded(ledger, { stream: 'rug/a', expectedRevision: 1, drafts: [note('rug/a', 'two')] });
      expect(heard).toEqual([['rug/a']]);
    });
  });
}
