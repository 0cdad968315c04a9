import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import references from '../data/references.json' with { type: 'json' };

const root = resolve(import.meta.dirname, '..');
const known = new Set(Object.keys(references));
const read = (path: string): string => readFileSync(join(root, path), 'utf8');
const under = (folder: string, ending: RegExp): readonly string[] =>
  readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => ending.test(name))
    .map((name) => join(folder, name));

const tables = under('data', /\.json$/).filter((path) => path !== 'data/references.json');

/** Every `source` in a table, however deep. */
function sourcesIn(value: unknown): readonly string[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, held]) =>
    name === 'source' && typeof held === 'string' ? [held] : sourcesIn(held),
  );
}

describe('every table of data says what it is, where it is from and how it was read', () => {
  test.each(tables)('%s', (path) => {
    const table = JSON.parse(read(path)) as Readonly<Record<string, unknown>>;
    for (const field of ['title', 'source', 'where', 'readFrom', 'unit']) {
      expect({ field, is: typeof table[field] === 'string' && table[field] !== '' }).toEqual({
        field,
        is: true,
      });
    }
    expect(sourcesIn(table).filter((source) => !known.has(source))).toEqual([]);
  });
});

describe('every citation is in the bibliography', () => {
  const code = under('src', /\.tsx?$/);

  test('in the comments of the sources', () => {
    const unknown = code.flatMap((path) =>
      Array.from(read(path).matchAll(/@source ([\w-]+)/g), ([, key = '']) => key)
        .filter((key) => key !== 'none' && key !== 'data' && !known.has(key))
        .map((key) => `${path}: ${key}`),
    );
    expect(unknown).toEqual([]);
  });

  test('of files that a comment points to, each is there', () => {
    const missing = code.flatMap((path) =>
      Array.from(read(path).matchAll(/(?:docs\/decisions|data)\/[\w/-]+\.(?:md|json)/g), ([target]) => target)
        .filter((target) => !existsInTree(target))
        .map((target) => `${path}: ${target}`),
    );
    expect(missing).toEqual([]);
  });

  test('of the bibliography, each work has a title, a kind, and an author where it was published', () => {
    const wrong = Object.entries(references as Readonly<Record<string, Readonly<Record<string, unknown>>>>)
      .filter(
        ([key, work]) =>
          !/^[a-z0-9]+(-[a-z0-9]+)*$/.test(key) ||
          typeof work['title'] !== 'string' ||
          !['published', 'practice', 'setting', 'memory'].includes(String(work['kind'])) ||
          (work['kind'] === 'published' && typeof work['author'] !== 'string'),
      )
      .map(([key]) => key);
    expect(wrong).toEqual([]);
  });
});

function existsInTree(path: string): boolean {
  try {
    read(path);
    return true;
  } catch {
    return false;
  }
}

describe('the calculations a subject offers say where they come from', () => {
  const doors = under('src/core', /(^|\/)index\.ts$/);

  /** Files and names that a door lets out; `*` for all of a file. */
  const letOut = (door: string): readonly (readonly [file: string, names: readonly string[]])[] =>
    Array.from(
      read(door).matchAll(/export (\*|\{[^}]*\}) from '\.\/([\w.]+)'/g),
      ([, what = '', file = '']) => [
        join(door, '..', file),
        what
          .replace(/[{}]|\btype\b/g, '')
          .split(',')
          .map((name) => name.trim()),
      ],
    );

  test.each(doors)('%s', (door) => {
    const silent = letOut(door).flatMap(([file, names]) =>
      Array.from(
        read(file).matchAll(/(\/\*\*(?:(?!\*\/)[\s\S])*\*\/\s*)?^export (?:async )?function (\w+)/gm),
        ([, comment = '', name = '']) =>
          (names.includes('*') || names.includes(name)) && !comment.includes('@source')
            ? `${file}: ${name}`
            : '',
      ).filter((line) => line !== ''),
    );
    expect(silent).toEqual([]);
  });
});
