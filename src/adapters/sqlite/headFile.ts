import { closeSync, existsSync, fdatasync, openSync, readFileSync, writeSync } from 'node:fs';
import { dirname } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { syncFolder } from '../disk/folder.ts';
import type { RecordHead } from '../record/storedEntry.ts';

/** Always the same length and less than a sector of any disk: it is written whole or not at all. */
const lineBytes = 128;
const lineOf = (head: RecordHead): string => `${JSON.stringify(head).padEnd(lineBytes - 1)}\n`;

/** How far the disk may be behind: a sync after each commit would slow the next one down. */
const mostBehindMs = 100;

/**
 * The latest head, kept outside the database file, so that entries cut off its end are missed. It is written
 * after each commit and may therefore be behind, never ahead; the disk is asked to keep it without waiting.
 * When it names an entry that the database does not hold, it is evidence and left alone from then on.
 */
export class HeadFile {
  readonly #path: string;
  readonly #file: number;
  readonly #isEvidence: boolean;
  readonly #closing = new AbortController();
  #isStale = false;
  #syncing: Promise<void> | null = null;

  constructor(path: string, linkAt: (position: number) => string | undefined) {
    this.#path = path;
    const isNew = !existsSync(path);
    this.#file = openSync(path, isNew ? 'wx+' : 'r+', 0o600);
    if (isNew) syncFolder(dirname(path));
    const head = this.read();
    this.#isEvidence = head !== null && linkAt(head.position) !== head.link;
  }

  /** Null before the first entry, and when the file is not what this program writes. */
  read(): RecordHead | null {
    try {
      const { position, link } = JSON.parse(readFileSync(this.#path, 'utf8')) as RecordHead;
      return Number.isInteger(position) && typeof link === 'string' ? { position, link } : null;
    } catch {
      return null;
    }
  }

  write(head: RecordHead): void {
    if (this.#isEvidence) return;
    try {
      writeSync(this.#file, lineOf(head), 0);
    } catch {
      // The entries are recorded already; an older head says less, but nothing false.
      return;
    }
    this.#isStale = true;
    this.#syncing ??= this.#syncSoon();
  }

  async close(): Promise<void> {
    this.#closing.abort();
    await this.#syncing;
    closeSync(this.#file);
  }

  async #syncSoon(): Promise<void> {
    while (this.#isStale) {
      await setTimeout(mostBehindMs, null, { signal: this.#closing.signal }).catch(() => null);
      this.#isStale = false;
      await new Promise<void>((synced) => fdatasync(this.#file, () => synced()));
    }
    this.#syncing = null;
  }
}
