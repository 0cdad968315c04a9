import type { AppendProblem, RecordUnavailable, SealBreak, SealBroken } from '../dossier/recordProblem.ts';
import type { WordsFor } from './words.ts';

type Unavailable = RecordUnavailable['facts']['reason'];

const unavailable = {
  locked: 'Another program is writing to it.',
  'disk-full': 'The disk is full.',
  'not-writable': 'This program may not write in its folder.',
  'disk-error': 'The disk reported an error.',
  damaged: 'The database file is damaged, or is not one.',
  'newer-version': 'It was written by a later version of this program.',
} satisfies Record<Unavailable, string>;

const unavailableNow = {
  locked:
    'Try again in a moment; if it stays so, close other programs that use the folder, such as a backup.',
  'disk-full': 'Free space on the disk, then send it again: what was typed is still on the screen.',
  'not-writable': 'Give the program’s user the right to read and write the data folder, then start again.',
  'disk-error': 'Check the disk and copy the data folder to another one before going on.',
  damaged: 'Stop here, keep the folder as it is, and go on from the newest backup.',
  'newer-version': 'Start the later version again; this one would not understand what it reads.',
} satisfies Record<Unavailable, string>;

const broken = {
  'entry-altered': 'is not what was sealed when it was recorded',
  'entry-missing': 'is missing',
  'order-altered': 'does not follow what was recorded before it in the whole record',
  'end-missing': 'was the last one recorded, and the record no longer holds it',
} satisfies Record<SealBreak, string>;

export const ledgerWords = {
  'stream-moved-on': ({ stream, expectedRevision, actualRevision }) => ({
    happened: `Somebody recorded something in ${stream} meanwhile: it is at entry ${actualRevision}, not ${expectedRevision}.`,
    matters: 'What was typed was decided without knowing that, so nothing of it was recorded.',
    now: 'Look at what is new, then send it again or change it; what was typed is kept.',
  }),
  'client-erased': ({ stream }) => ({
    happened: `The data of ${stream} have been erased.`,
    matters: 'Its key is destroyed, so nothing more can be recorded there that anyone could read.',
    now: 'Enter the person as a new client.',
  }),
  'record-unavailable': ({ reason }) => ({
    happened: `The record cannot be written. ${unavailable[reason]}`,
    matters: 'Nothing of what was sent was recorded, neither whole nor in part.',
    now: unavailableNow[reason],
  }),
  'seal-broken': ({ stream, revision, reason }) => ({
    happened: `Entry ${revision} of ${stream === '' ? 'the whole record' : stream} ${broken[reason]}.`,
    matters: 'The record was changed or cut outside this program, and can no longer prove what happened.',
    now: 'Keep the data folder as it is, compare it with the newest backup and with the seals printed on papers.',
  }),
} satisfies WordsFor<AppendProblem | SealBroken>;
