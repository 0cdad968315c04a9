import type { SealBreak, SealBroken } from '../../dossier/recordProblem.ts';
import { emptySeal, linkOf, sealOfText } from '../../dossier/seal.ts';
import { refused } from '../../units/index.ts';
import type { RecordHead, StoredEntry, StreamHead } from './storedEntry.ts';

const start: StreamHead = { revision: 0, seal: emptySeal };

/** Takes stored entries in the order of recording and notes every seal, revision and link that does not fit. */
export class SealCheck {
  readonly broken: SealBroken[] = [];
  #entries = 0;
  #record: RecordHead = { position: 0, link: emptySeal };
  readonly #heads = new Map<string, StreamHead>();

  get entries(): number {
    return this.#entries;
  }

  get streams(): number {
    return this.#heads.size;
  }

  get position(): number {
    return this.#record.position;
  }

  /** Checks the next entry of all streams. */
  takeOfAll(entry: StoredEntry): void {
    if (
      entry.position !== this.#record.position + 1 ||
      entry.link !== linkOf(this.#record.link, entry.seal)
    ) {
      this.#note(entry.stream, entry.revision, 'order-altered');
    }
    this.#record = { position: entry.position, link: entry.link };
    this.takeOfStream(entry);
  }

  /** Checks the next entry of its stream only. */
  takeOfStream(entry: StoredEntry): void {
    const before = this.#heads.get(entry.stream) ?? start;
    if (entry.revision !== before.revision + 1) {
      this.#note(entry.stream, before.revision + 1, 'entry-missing');
    } else if (entry.seal !== sealOfText(entry, entry.body, before.seal)) {
      this.#note(entry.stream, entry.revision, 'entry-altered');
    }
    this.#heads.set(entry.stream, { revision: entry.revision, seal: entry.seal });
    this.#entries += 1;
  }

  /** Checks the head kept outside the database against the link found at its position. */
  takeOutsideHead(outside: RecordHead, linkThere: string | undefined): void {
    if (outside.link !== linkThere) this.#note('', outside.position, 'end-missing');
  }

  #note(stream: string, revision: number, reason: SealBreak): void {
    this.broken.push(refused('seal-broken', { stream, revision, reason }).problem);
  }
}
