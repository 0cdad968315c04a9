import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Entry } from './entry.ts';
import { canonicalJson, hashOfText, linkOf, sealOf, sealOfText } from './seal.ts';

describe('RFC 8785, sections 3.2.2 to 3.2.3 (from memory of the source; exact, it is text)', () => {
  test('numbers, text and literals have one form', () => {
    const example = JSON.parse(String.raw`{
      "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
      "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
      "literals": [null, true, false]
    }`) as unknown;
    expect(canonicalJson(example)).toBe(
      String.raw`{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`,
    );
  });

  test('keys stand in the order of their UTF-16 code units', () => {
    const example = JSON.parse(
      String.raw`{"\u20ac":"Euro Sign","\r":"Carriage Return","\ufb33":"Hebrew Letter Dalet With Dagesh",
        "1":"One","\ud83d\ude00":"Emoji: Grinning Face","\u0080":"Control","\u00f6":"Latin Small Letter O With Diaeresis"}`,
    ) as unknown;
    expect(
      Object.values(JSON.parse(canonicalJson(example)) as object).map((word: string) => word[0]),
    ).toEqual(
      // JSON.parse lists the key "1" first because it looks like an index; the text is what counts.
      ['O', 'C', 'C', 'L', 'E', 'E', 'H'],
    );
    const text = canonicalJson(example);
    const order = ['Carriage', 'One', 'Control', 'Latin', 'Euro', 'Emoji', 'Hebrew'].map((word) =>
      text.indexOf(word),
    );
    expect(order).toEqual([...order].sort((a, b) => a - b));
  });
});

describe('FIPS 180-4, examples of SHA-256 (from memory of the source; exact, it is a hash)', () => {
  test.each([
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
    [
      'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    ],
  ])('of "%s"', (text, digest) => {
    expect(hashOfText(text)).toBe(digest);
  });

  test('agrees with another implementation on any text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (text) => {
        expect(hashOfText(text)).toBe(createHash('sha256').update(text).digest('hex'));
      }),
    );
  });
});

test('canonical text says the same as the value, whatever order its keys were given in', () => {
  fc.assert(
    fc.property(fc.jsonValue({ maxDepth: 4 }), (value) => {
      const text = canonicalJson(value);
      expect(JSON.parse(text)).toEqual(JSON.parse(JSON.stringify(value)));
      expect(canonicalJson(reversed(value))).toBe(text);
    }),
  );
});

/** The same value with all its keys in the opposite order. */
function reversed(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(reversed);
  if (typeof value !== 'object' || value === null) return value;
  const members = Object.entries(value).map(([key, member]) => [key, reversed(member)] as const);
  return Object.fromEntries(members.reverse());
}

test.each([
  ['a number that is none', Number.NaN],
  ['an endless number', { massKg: Number.POSITIVE_INFINITY }],
  ['a date object', [new Date(0)]],
  ['a map', new Map()],
  ['a function', () => 1],
  ['nothing in a list', [undefined]],
])('%s cannot stand in a record', (_what, value) => {
  expect(() => canonicalJson(value)).toThrow(TypeError);
});

const entry: Omit<Entry, 'seal'> = {
  id: '01',
  stream: 'rug/a',
  revision: 1,
  at: '2026-11-25T09:00:00.000Z',
  by: 'p',
  version: 1,
  fact: { type: 'NoteAdded', happenedAt: undefined },
};

test('a seal is the hash of the canonical entry with the seal before it', () => {
  expect(sealOf(entry, 'b')).toBe(hashOfText(canonicalJson({ ...entry, before: 'b' })));
  expect(sealOf(entry, 'b')).toBe(sealOfText(entry, '{"type":"NoteAdded"}', 'b'));
});

test('a change of any part of an entry, or of the seal before it, changes the seal', () => {
  const seals = [
    sealOf(entry, ''),
    sealOf(entry, 'x'),
    sealOf({ ...entry, id: '02' }, ''),
    sealOf({ ...entry, stream: 'rug/b' }, ''),
    sealOf({ ...entry, revision: 2 }, ''),
    sealOf({ ...entry, at: '2026-11-25T09:00:00.001Z' }, ''),
    sealOf({ ...entry, by: 'q' }, ''),
    sealOf({ ...entry, version: 2 }, ''),
    sealOf({ ...entry, fact: { type: 'NoteAdded', happenedAt: '2026-11-25' } }, ''),
  ];
  expect(new Set(seals).size).toBe(seals.length);
});

test('a link depends on the link before it and on the seal', () => {
  expect(new Set([linkOf('', 's'), linkOf('a', 's'), linkOf('', 't')]).size).toBe(3);
});
