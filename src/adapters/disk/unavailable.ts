import type { RecordUnavailable } from '../../dossier/recordProblem.ts';
import { refused } from '../../units/index.ts';

type Reason = RecordUnavailable['facts']['reason'];

/** Codes of SQLite and of the operating system, and what they mean to a person. */
const reasons: readonly (readonly [RegExp, Reason])[] = [
  [/^SQLITE_(BUSY|LOCKED)/, 'locked'],
  [/^(SQLITE_FULL|ENOSPC|EDQUOT)$/, 'disk-full'],
  [/^SQLITE_(READONLY|CANTOPEN|PERM|AUTH)|^(EACCES|EPERM|EROFS|ENOENT|ENOTDIR|EEXIST)$/, 'not-writable'],
  [/^SQLITE_IOERR|^EIO$/, 'disk-error'],
  [/^SQLITE_(CORRUPT|NOTADB)/, 'damaged'],
];

/** The problem behind an error of the database or the file system; null when it is a bug of ours. */
export function unavailable(error: unknown): RecordUnavailable | null {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  const reason = reasons.find(([pattern]) => pattern.test(code))?.[1];
  return reason === undefined ? null : refused('record-unavailable', { reason }).problem;
}
