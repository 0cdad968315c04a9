import { createCipheriv, createDecipheriv, randomBytes } from 'node:crypto';
import type { AnyFact, EncryptedFact, Entry, ErasedFact } from '../../dossier/entry.ts';
import { canonicalJson } from '../../dossier/seal.ts';
import type { StoredEntry } from './storedEntry.ts';

const tagBytes = 16;

/** A new key for one client. */
export const newClientKey = (): Uint8Array => randomBytes(32);

/** Binds a cipher text to its place, so that it cannot be moved to another entry. */
const placeOf = ({ stream, id }: { readonly stream: string; readonly id: string }): Buffer =>
  Buffer.from(`${stream}\n${id}`);

/** The body of a client's entry as it is stored. */
export function encryptFact(
  draft: { readonly stream: string; readonly id: string; readonly fact: AnyFact },
  key: Uint8Array,
): string {
  const nonce = randomBytes(12);
  const cipher = createCipheriv('aes-256-gcm', key, nonce).setAAD(placeOf(draft));
  const text = Buffer.concat([
    cipher.update(canonicalJson(draft.fact), 'utf8'),
    cipher.final(),
    cipher.getAuthTag(),
  ]);
  return canonicalJson({
    type: 'Encrypted',
    cipher: 'aes-256-gcm',
    nonce: nonce.toString('base64'),
    text: text.toString('base64'),
  } satisfies EncryptedFact);
}

const erased: ErasedFact = { type: 'ClientErased' };

/** Reads a client's fact; without the key only that it was erased. A cipher text that was altered throws. */
export function decryptFact(stored: StoredEntry, key: Uint8Array | null): AnyFact {
  if (key === null) return erased;
  const { nonce, text } = JSON.parse(stored.body) as EncryptedFact;
  const bytes = Buffer.from(text, 'base64');
  const decipher = createDecipheriv('aes-256-gcm', key, Buffer.from(nonce, 'base64'))
    .setAAD(placeOf(stored))
    .setAuthTag(bytes.subarray(-tagBytes));
  const plain = Buffer.concat([decipher.update(bytes.subarray(0, -tagBytes)), decipher.final()]);
  return JSON.parse(plain.toString('utf8')) as AnyFact;
}

/** An entry as readers see it. `key` is undefined for streams that are not encrypted, null once erased. */
export function readable(stored: StoredEntry, key: Uint8Array | null | undefined): Entry {
  const { id, stream, revision, at, by, version, seal } = stored;
  const fact = key === undefined ? (JSON.parse(stored.body) as AnyFact) : decryptFact(stored, key);
  return { id, stream, revision, at, by, version, fact, seal };
}
