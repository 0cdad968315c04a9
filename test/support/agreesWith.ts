import { describe, expect, test } from 'vitest';
import references from '../../data/references.json' with { type: 'json' };

export type ReferenceKey = keyof typeof references;

/** A published value, or a column of them, that a calculation must return. */
export interface PublishedValues<Row> {
  readonly source: ReferenceKey;
  /** Table, clause, page or equation. */
  readonly where: string;
  /** 'the source', 'memory of the source', or where else the values were read. */
  readonly readFrom: string;
  /** Largest absolute difference allowed, and the reason it is that. */
  readonly within: number | ((expected: number) => number);
  readonly because: string;
  readonly rows: readonly (Row & { readonly expected: number })[];
}

/** Holds a calculation against published values; each row is a test whose name reads as a citation. */
export function agreesWith<Row>(published: PublishedValues<Row>, calculate: (row: Row) => number): void {
  const { title } = references[published.source];
  describe(`${title}, ${published.where} (read from ${published.readFrom}; ${published.because})`, () => {
    test.each(published.rows.map((row) => [JSON.stringify(row), row] as const))('%s', (_name, row) => {
      const allowed =
        typeof published.within === 'number' ? published.within : published.within(row.expected);
      const difference = Math.abs(calculate(row) - row.expected);
      expect(difference).not.toBeNaN();
      expect(difference).toBeLessThanOrEqual(allowed);
    });
  });
}
