import fc from 'fast-check';
import { expect, test } from 'vitest';
import { searchWords } from '../../dossier/searchWords.ts';
import type { ListQuery, ListRow } from '../../ports/ledger.ts';
import { RowIndex } from './rowIndex.ts';

const row = (stream: string, words: readonly string[], client: string | null = null): ListRow => ({
  ...{ stream, tag: null, client, consignment: null, stage: null, place: null, dueAt: null, inHouse: false },
  ...{ words, body: null },
});

/** What a query means, by looking at every row. */
function looked(rows: ReadonlyMap<string, ListRow>, numbers: ReadonlyMap<string, number>, query: ListQuery) {
  const clientWords = (client: string | null) => rows.get(`client/${client}`)?.words ?? [];
  return [...rows.values()]
    .filter(({ stream }) => stream.startsWith(`${query.kind}/`))
    .filter(({ client }) => query.client === undefined || client === query.client)
    .filter(({ words, client }) =>
      searchWords(query.find ?? '').every((beginning) =>
        [...words, ...(query.kind === 'rug' ? clientWords(client) : [])].some((word) =>
          word.startsWith(beginning),
        ),
      ),
    )
    .map(({ stream }) => stream)
    .sort((a, b) => (numbers.get(b) ?? 0) - (numbers.get(a) ?? 0))
    .slice(0, query.limit);
}

test('however rows come, change and go, a query finds what looking at every row finds', () => {
  const word = fc.constantFrom('red', 'redder', 'rose', 'blue', 'b', 'wool', 'anna', 'ann');
  const client = fc.constantFrom('k', 'l', null);
  const stream = fc.constantFrom('rug/1', 'rug/2', 'rug/3', 'rug/4', 'client/k', 'client/l', 'room/1');
  const words = fc.uniqueArray(word, { maxLength: 3 });
  const put = fc.record({ stream, words, client, gone: fc.boolean() });
  const query = fc.record(
    {
      kind: fc.constantFrom('rug' as const, 'client' as const, 'room' as const),
      find: fc.constantFrom('r', 're', 'b', 'ann', 'red wool', 'anna b', 'zz'),
      client: fc.constantFrom('k', 'l'),
      limit: fc.integer({ min: 1, max: 5 }),
    },
    { requiredKeys: ['kind', 'limit'] },
  );
  fc.assert(
    fc.property(fc.array(put, { maxLength: 25 }), fc.array(query, { maxLength: 5 }), (puts, queries) => {
      const index = new RowIndex();
      const rows = new Map<string, ListRow>();
      const numbers = new Map<string, number>();
      for (const { stream, words, client, gone } of puts) {
        const began = numbers.get(stream) ?? numbers.size + 1;
        numbers.set(stream, began);
        const made = gone ? null : row(stream, words, stream.startsWith('rug/') ? client : null);
        index.put(stream, began, made);
        if (made === null) rows.delete(stream);
        else rows.set(stream, made);
        for (const asked of queries) expect(index.match(asked)).toEqual(looked(rows, numbers, asked));
      }
    }),
  );
});

test('pages of thousands of rows with the same word follow each other without a gap', () => {
  const index = new RowIndex();
  const streams = Array.from({ length: 5000 }, (_, at) => `rug/${at}`);
  for (const [at, stream] of streams.entries()) {
    index.put(stream, at + 1, row(stream, ['wool', `number${at}`, at % 2 === 0 ? 'red' : 'blue']));
  }
  const found: string[] = [];
  for (;;) {
    const last = found.at(-1);
    const page = index.match({
      kind: 'rug',
      find: 'wo r',
      limit: 700,
      ...(last === undefined ? {} : { after: last }),
    });
    if (page.length === 0) break;
    found.push(...page);
  }
  expect(found).toEqual(streams.filter((_, at) => at % 2 === 0).reverse());
  expect(index.match({ kind: 'rug', find: 'number4999 wool', limit: 5 })).toEqual(['rug/4999']);
  expect(index.match({ kind: 'rug', find: 'red blue', limit: 5 })).toEqual([]);
});
