import { createCipheriv, createDecipheriv, randomBytes } from 'node:crypto';
import type { AnyFact, EncryptedFact, Entry, ErasedFact } from '../../dossier/entry.ts';
import { canonicalJson } from '../../dossier/seal.ts';
import type { StoredEntry } from './storedEntry.ts';

const nonceBytes = 12;
const tagBytes = 16;

/** Where a cipher text belongs. */
interface Place {
  readonly stream: string;
  readonly id: string;
}

/** A new key for one client. */
export const newClientKey = (): Uint8Array => randomBytes(32);

/** Binds a cipher text to its place, so that it cannot be moved to another entry. */
const placeOf = ({ stream, id }: Place): Buffer => Buffer.from(`${stream}\n${id}`);

/** A nonce, the encrypted bytes, and what proves that they are whole. */
interface Cipher {
  readonly nonce: Uint8Array;
  readonly text: Uint8Array;
}

function encrypt(plain: Uint8Array, key: Uint8Array, place: Uint8Array): Cipher {
  const nonce = randomBytes(nonceBytes);
  const cipher = createCipheriv('aes-256-gcm', key, nonce).setAAD(place);
  return { nonce, text: Buffer.concat([cipher.update(plain), cipher.final(), cipher.getAuthTag()]) };
}

/** A cipher text that was altered or moved throws. */
function decrypt({ nonce, text }: Cipher, key: Uint8Array, place: Uint8Array): Buffer {
  const decipher = createDecipheriv('aes-256-gcm', key, nonce)
    .setAAD(place)
    .setAuthTag(text.subarray(-tagBytes));
  return Buffer.concat([decipher.update(text.subarray(0, -tagBytes)), decipher.final()]);
}

/** The body of a client's entry as it is stored. */
export function encryptFact(
  draft: { readonly stream: string; readonly id: string; readonly fact: AnyFact },
  key: Uint8Array,
): string {
  const { nonce, text } = encrypt(Buffer.from(canonicalJson(draft.fact)), key, placeOf(draft));
  return canonicalJson({
    type: 'Encrypted',
    cipher: 'aes-256-gcm',
    nonce: Buffer.from(nonce).toString('base64'),
    text: Buffer.from(text).toString('base64'),
  } satisfies EncryptedFact);
}

const erased: ErasedFact = { type: 'ClientErased' };

/** Reads a client's fact; without the key only that it was erased. A cipher text that was altered throws. */
export function decryptFact(stored: StoredEntry, key: Uint8Array | null): AnyFact {
  if (key === null) return erased;
  const { nonce, text } = JSON.parse(stored.body) as EncryptedFact;
  const cipher = { nonce: Buffer.from(nonce, 'base64'), text: Buffer.from(text, 'base64') };
  return JSON.parse(decrypt(cipher, key, placeOf(stored)).toString('utf8')) as AnyFact;
}

/** A client's paper as a file: the nonce, then the encrypted bytes; `id` is the hash of the paper. */
export function encryptPaper(paper: Uint8Array, key: Uint8Array, place: Place): Uint8Array {
  const { nonce, text } = encrypt(paper, key, placeOf(place));
  return Buffer.concat([nonce, text]);
}

/** The paper in such a file. A file that was altered or moved throws. */
export function decryptPaper(file: Uint8Array, key: Uint8Array, place: Place): Uint8Array {
  const cipher = { nonce: file.subarray(0, nonceBytes), text: file.subarray(nonceBytes) };
  return decrypt(cipher, key, placeOf(place));
}

/** An entry as readers see it. `key` is undefined for streams that are not encrypted, null once erased. */
export function readable(stored: StoredEntry, key: Uint8Array | null | undefined): Entry {
  const { id, stream, revision, at, by, version, seal } = stored;
  const fact = key === undefined ? (JSON.parse(stored.body) as AnyFact) : decryptFact(stored, key);
  return { id, stream, revision, at, by, version, fact, seal };
}
