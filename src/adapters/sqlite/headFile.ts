import { closeSync, existsSync, fdatasync, openSync, readFileSync, writeSync } from 'node:fs';
import { dirname } from 'node:path';
import { syncFolder } from '../disk/folder.ts';
import type { RecordHead } from '../record/storedEntry.ts';

/** Two slots written in turn: a write torn by a power cut leaves the other one whole. */
const slotBytes = 128;
const emptySlot = `${' '.repeat(slotBytes - 1)}\n`;

/**
 * The latest head, kept outside the database file, so that entries cut off its end are missed. It is written
 * after each commit and may therefore be behind, never ahead; the disk is asked to keep it without waiting.
 * When it names an entry that the database does not hold, it is evidence and left alone from then on.
 */
export class HeadFile {
  readonly #path: string;
  readonly #file: number;
  readonly #isEvidence: boolean;
  #slot: number;
  #written = 0;
  #syncing: Promise<void> | null = null;

  constructor(path: string, linkAt: (position: number) => string | undefined) {
    this.#path = path;
    const isNew = !existsSync(path);
    this.#file = openSync(path, isNew ? 'wx+' : 'r+', 0o600);
    if (isNew) {
      writeSync(this.#file, emptySlot + emptySlot, 0);
      syncFolder(dirname(path));
    }
    const slots = this.#slots();
    const latest = latestOf(slots);
    this.#slot = slots.indexOf(latest) === 0 ? 1 : 0;
    this.#isEvidence = latest !== null && linkAt(latest.position) !== latest.link;
  }

  read(): RecordHead | null {
    return latestOf(this.#slots());
  }

  write(head: RecordHead): void {
    if (this.#isEvidence) return;
    writeSync(this.#file, `${JSON.stringify(head).padEnd(slotBytes - 1)}\n`, this.#slot * slotBytes);
    this.#slot = 1 - this.#slot;
    this.#written += 1;
    this.#syncing ??= this.#sync();
  }

  async close(): Promise<void> {
    await this.#syncing;
    closeSync(this.#file);
  }

  /** One sync at a time; what is written meanwhile is covered by the next. */
  async #sync(): Promise<void> {
    for (let covered = -1; covered !== this.#written; ) {
      covered = this.#written;
      await new Promise<void>((synced) => fdatasync(this.#file, () => synced()));
    }
    this.#syncing = null;
  }

  #slots(): readonly (RecordHead | null)[] {
    const text = readFileSync(this.#path, 'utf8');
    return [0, 1].map((slot) => parseHead(text.slice(slot * slotBytes, (slot + 1) * slotBytes)));
  }
}

function parseHead(text: string): RecordHead | null {
  try {
    const { position, link } = JSON.parse(text) as RecordHead;
    return Number.isInteger(position) && typeof link === 'string' ? { position, link } : null;
  } catch {
    return null;
  }
}

const latestOf = (slots: readonly (RecordHead | null)[]): RecordHead | null =>
  slots.reduce((a, b) => (b !== null && (a === null || b.position > a.position) ? b : a), null);
