/**
 * One signed fact or act in a stream. Never changed: a mistake is taken out of account by a later
 * `EntryWithdrawn`, and both stay readable.
 */
export interface Entry<Fact extends AnyFact = AnyFact> {
  /** UUIDv7 made by whoever wrote it; writing the same id twice records it once. */
  readonly id: string;
  /** `rug/<id>`, `client/<id>`, `room/<id>` or `workshop`. */
  readonly stream: string;
  /** 1 for the first entry of the stream, then counting up without a gap. */
  readonly revision: number;
  /** Instant of recording, `2026-11-25T09:00:00.000Z`, by the server's clock. */
  readonly at: string;
  /** Id of the person who recorded it. */
  readonly by: string;
  /** Version of the stored shape of `fact`; older ones are lifted when read. */
  readonly version: number;
  readonly fact: Fact;
  /** SHA-256 (hex) over this entry and the seal before it in the stream. */
  readonly seal: string;
}

/** What every fact has: the name of its type, and optionally when it truly happened if written down later. */
export interface AnyFact {
  readonly type: string;
  readonly happenedAt?: string | undefined;
}

/** A fact on its way into a stream; the ledger gives it revision and seal. */
export type EntryDraft<Fact extends AnyFact = AnyFact> = Omit<Entry<Fact>, 'revision' | 'seal'>;

/** What stands in a client's stream where a fact stood, once the client's key has been destroyed. */
export interface ErasedFact {
  readonly type: 'ClientErased';
}

/** A client's fact as the store holds it; its seal is over this form, so that it outlives the key. */
export interface EncryptedFact {
  readonly type: 'Encrypted';
  readonly cipher: 'aes-256-gcm';
  /** Base64 of 12 bytes. */
  readonly nonce: string;
  /** Base64 of the cipher text and its 16-byte authentication tag. */
  readonly text: string;
}

export type StreamKind = 'rug' | 'client' | 'room' | 'workshop';

/** The kind of a stream by its name. */
export const streamKind = (stream: string): StreamKind => {
  const kind = stream.split('/')[0];
  return kind === 'rug' || kind === 'client' || kind === 'room' ? kind : 'workshop';
};
