import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import type { Entry } from './entry.ts';

/** What is left of an entry when the fact is held apart, as text. */
export type EntryFrame = Omit<Entry, 'fact' | 'seal'>;

/** The seal before the first entry of a stream, and the link before the first entry of all. */
export const emptySeal = '';

/**
 * The one way to write a value as JSON text: keys in the order of their UTF-16 code units, no white space.
 * Properties that are undefined are left out, as JSON does.
 *
 * @param value - anything JSON can hold; a number that is not finite or a value JSON has no form for is a bug
 * @returns the text; equal values give equal text
 * @source rfc-8785, section 3.2
 */
export function canonicalJson(value: unknown): string {
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return JSON.stringify(value);
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new TypeError(`${value} cannot stand in a record`);
    return JSON.stringify(value);
  }
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(',')}]`;
  if (typeof value === 'object' && isPlain(value)) {
    const members = Object.entries(value)
      .filter(([, member]) => member !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, member]) => `${JSON.stringify(key)}:${canonicalJson(member)}`);
    return `{${members.join(',')}}`;
  }
  throw new TypeError(`a ${typeof value} cannot stand in a record`);
}

/** An object written as `{…}`, not a Date or a Map, whose content would silently be lost. */
function isPlain(value: object): boolean {
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === null || Object.getPrototypeOf(prototype) === null;
}

/**
 * SHA-256 of a text.
 *
 * @param text - any text; hashed as UTF-8
 * @returns 64 hexadecimal digits
 * @source fips-180-4, section 6.2
 */
export const hashOfText = (text: string): string => bytesToHex(sha256(utf8ToBytes(text)));

/**
 * The seal of an entry whose fact is at hand as canonical text.
 *
 * @param frame - the entry without its fact
 * @param factText - the stored fact, as `canonicalJson` writes it
 * @param before - seal of the entry before it in the stream; empty for the first
 * @returns 64 hexadecimal digits
 * @source none: rule of this project, docs/decisions/0003-the-record.md
 */
export function sealOfText(frame: EntryFrame, factText: string, before: string): string {
  const { at, by, id, revision, stream, version } = frame;
  const text = JSON.stringify;
  // Written out rather than handed to canonicalJson, so that sealing does not parse the fact again.
  return hashOfText(
    `{"at":${text(at)},"before":${text(before)},"by":${text(by)},"fact":${factText},"id":${text(id)},` +
      `"revision":${revision},"stream":${text(stream)},"version":${version}}`,
  );
}

/**
 * The seal of an entry: it fixes the entry and, through the seal before it, everything earlier in the stream.
 *
 * @param entry - the entry as stored: a client's fact in its encrypted form
 * @param before - seal of the entry before it in the stream; empty for the first
 * @returns 64 hexadecimal digits
 * @source none: rule of this project, docs/decisions/0003-the-record.md
 */
export const sealOf = (entry: Omit<Entry, 'seal'>, before: string): string =>
  sealOfText(entry, canonicalJson(entry.fact), before);

/**
 * The next link of the chain that runs over the heads of all streams, in the order in which they moved.
 *
 * @param before - the link before it; empty for the first entry of all
 * @param seal - seal of the entry that moved its stream's head
 * @returns 64 hexadecimal digits
 * @source none: rule of this project, docs/decisions/0003-the-record.md
 */
export const linkOf = (before: string, seal: string): string => hashOfText(`${before}\n${seal}`);
