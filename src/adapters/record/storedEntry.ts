import { type EntryFrame, linkOf, sealOfText } from '../../dossier/seal.ts';
import type { StreamAppend } from '../../ports/ledger.ts';

/** An entry as a store keeps it: its fact as canonical text, in a client's stream encrypted. */
export interface StoredEntry extends EntryFrame {
  /** 1 for the first entry of all streams, then counting up without a gap. */
  readonly position: number;
  readonly body: string;
  readonly seal: string;
  /** Link of the chain over all stream heads. */
  readonly link: string;
}

/** Where a stream, or the whole record, ends. */
export interface StreamHead {
  readonly revision: number;
  readonly seal: string;
}
export interface RecordHead {
  readonly position: number;
  readonly link: string;
}

export interface Admission {
  /** One for each draft, in their order: new, or as it was recorded before. */
  readonly answered: readonly StoredEntry[];
  /** Those that are new and must be written. */
  readonly fresh: readonly StoredEntry[];
}

/**
 * Decides what an append amounts to: drafts already recorded are answered as they stand, the others are sealed
 * onto the stream; null when there are others and the stream is not at the revision they were made for.
 */
export function admit(
  { stream, drafts, expectedRevision }: StreamAppend,
  ends: { readonly stream: StreamHead; readonly record: RecordHead },
  recorded: (id: string) => StoredEntry | undefined,
  bodyOf: (draft: StreamAppend['drafts'][number]) => string,
): Admission | null {
  const answered: StoredEntry[] = [];
  const fresh = new Map<string, StoredEntry>();
  let { revision, seal } = ends.stream;
  let { position, link } = ends.record;
  for (const draft of drafts) {
    if (draft.stream !== stream) throw new Error(`a draft for ${draft.stream} was handed to ${stream}`);
    const known = fresh.get(draft.id) ?? recorded(draft.id);
    if (known !== undefined) {
      answered.push(known);
      continue;
    }
    const { id, at, by, version } = draft;
    const body = bodyOf(draft);
    revision += 1;
    position += 1;
    const frame = { id, stream, revision, at, by, version };
    seal = sealOfText(frame, body, seal);
    link = linkOf(link, seal);
    const entry = { ...frame, position, body, seal, link };
    fresh.set(id, entry);
    answered.push(entry);
  }
  const claims = fresh.size > 0 || drafts.length === 0;
  if (claims && ends.stream.revision !== expectedRevision) return null;
  return { answered, fresh: [...fresh.values()] };
}
