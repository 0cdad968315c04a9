import type { Database } from 'better-sqlite3';
import { streamKind } from '../../dossier/entry.ts';
import { newClientKey } from '../record/clientCipher.ts';
import { prepareStatements, type Statements } from './statements.ts';

/** A destroyed key is overwritten where it lies: removing its row could leave a copy in a page being merged. */
const destroyed = new Uint8Array(32);

/** The keys under which clients' facts are encrypted; streams that are not a client's have none. */
export class ClientKeys {
  readonly #statements: Statements;

  constructor(statements: Statements) {
    this.#statements = statements;
  }

  /** Undefined for a stream that is not encrypted, null when there is no key or no longer one. */
  forReading(stream: string): Uint8Array | null | undefined {
    if (streamKind(stream) !== 'client') return undefined;
    const secret = this.#statements.key.get(stream)?.secret;
    return secret === undefined || secret.every((byte) => byte === 0) ? null : secret;
  }

  /** As for reading, but a client that has none yet is given a key; null once it was destroyed. */
  forWriting(stream: string): Uint8Array | null | undefined {
    const key = this.forReading(stream);
    if (key !== null || this.#statements.key.get(stream) !== undefined) return key;
    const fresh = newClientKey();
    this.#statements.addKey.run(stream, fresh);
    return fresh;
  }

  destroy(stream: string): void {
    this.#statements.destroyKey.run(destroyed, stream);
  }
}

/** The key of a client's stream, for what is kept of them beside the record; null once it was destroyed. */
export function clientKeyIn(database: Database): (stream: string) => Uint8Array | null {
  const keys = new ClientKeys(prepareStatements(database));
  return (stream) => keys.forWriting(stream) ?? null;
}
