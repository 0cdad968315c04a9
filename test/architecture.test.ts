import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import rules from '../data/wash/rules.json' with { type: 'json' };

const root = join(import.meta.dirname, '..');
const text = readFileSync(join(root, 'ARCHITECTURE.md'), 'utf8');

/** `R03, R13 … R20` as the numbers it means. */
const rulesIn = (words: string): readonly string[] =>
  words.split(', ').flatMap((part) => {
    const [first = '', last = first] = part.split(' … ');
    const [from, to] = [Number(first.slice(1)), Number(last.slice(1))];
    return Array.from({ length: to - from + 1 }, (_, at) => `R${String(from + at).padStart(2, '0')}`);
  });

const rows = [...text.matchAll(/^\| (R[R\d, …]+) \| [^|]+ \| ([^|]+) \|$/gm)].map(
  ([, numbers = '', files = '']) => ({
    rules: rulesIn(numbers),
    files: [...files.matchAll(/`(\w+\.ts)`/g)].map(([, file = '']) => file),
  }),
);

describe('the guide to the code', () => {
  test('says of every rule of the wash where it is applied', () => {
    const numbered = rules.rows.map(({ id }) => id).filter((id) => /^R\d\d$/.test(id));
    expect(rows.flatMap((row) => row.rules).sort()).toEqual([...numbered].sort());
  });

  test('names files in which those rules stand', () => {
    for (const { rules: named, files } of rows)
      for (const file of files) {
        const code = readFileSync(join(root, 'src/core/wash', file), 'utf8');
        for (const rule of named) expect(code, `${rule} in ${file}`).toContain(`'${rule}'`);
      }
  });

  test('names no folder and no file that is not there', () => {
    const named = [...text.matchAll(/`([\w/-]+(?:\.\w+)+|(?:src|data|docs|test)\/[\w/-]*)`/g)].map(
      ([, path = '']) => path,
    );
    const missing = named.filter(
      (path) => !['', 'src', 'src/core/wash'].some((folder) => existsSync(join(root, folder, path))),
    );
    expect(missing).toEqual([]);
  });
});
