import type { Problem } from '../units/index.ts';

/** The stream has entries that whoever appended did not know of. */
export type RevisionConflict = Problem<
  'stream-moved-on',
  { readonly stream: string; readonly expectedRevision: number; readonly actualRevision: number }
>;

/** The client's key was destroyed: nothing can be added to a stream that nobody can read any more. */
export type ClientErased = Problem<'client-erased', { readonly stream: string }>;

/** The store itself could not be opened or written; nothing of what was asked was recorded. */
export type RecordUnavailable = Problem<
  'record-unavailable',
  { readonly reason: 'locked' | 'disk-full' | 'not-writable' | 'disk-error' | 'damaged' | 'newer-version' }
>;

export type AppendProblem = RevisionConflict | ClientErased | RecordUnavailable;

/**
 * `entry-altered`: an entry is not what was sealed. `entry-missing`: a revision is gone from its stream.
 * `order-altered`: the chain over all streams does not fit here. `end-missing`: entries are gone that the head
 * kept outside the database names.
 */
export type SealBreak = 'entry-altered' | 'entry-missing' | 'order-altered' | 'end-missing';

export type SealBroken = Problem<
  'seal-broken',
  { readonly stream: string; readonly revision: number; readonly reason: SealBreak }
>;
