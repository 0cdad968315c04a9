import { writeSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { systemClock } from '../../src/adapters/clock/systemClock.ts';
import { uuidv7 } from '../../src/adapters/clock/uuidv7.ts';
import { DiskPhotos } from '../../src/adapters/disk/diskPhotos.ts';
import type { StreamAppend } from '../../src/ports/ledger.ts';
import { openInFolder } from '../support/openInFolder.ts';
import { rowOfNotes } from '../support/rowOfNote.ts';

/**
 * A process to be killed: writes entries and photographs as fast as it can, and says each one that was
 * acknowledged in a line on standard output. `writeUnderLoad.js FOLDER STREAMS` goes on until it is killed, in
 * batches over so many streams; with `once` it writes one batch and one photograph, for a system-call trace.
 */
const [folder, streams, mode] = process.argv.slice(2);
if (folder === undefined) throw new Error('which folder?');
const batchSize = Number(streams);

const ids = uuidv7();
const { ledger } = openInFolder(folder, rowOfNotes);
const photos = new DiskPhotos(join(folder, 'photos'));
const say = (line: string) => writeSync(1, `${line}\n`);

/** A batch over several streams, some of them a client's, with notes from short to long. */
function batch(length: number): readonly StreamAppend[] {
  const name = ids.next();
  return Array.from({ length: batchSize }, (_, at) => {
    const stream = `${at === 1 ? 'client' : 'rug'}/${ids.next()}`;
    const fact = { type: 'NoteAdded', text: `${name} ${'x'.repeat(length)}` };
    const draft = { id: ids.next(), stream, at: systemClock.now(), by: 'p', version: 1, fact };
    return { stream, expectedRevision: 0, drafts: [draft] };
  });
}

async function writeEntries(length: number): Promise<void> {
  const answer = await ledger.append(batch(length));
  if (!answer.ok) throw new Error(answer.problem.code);
  for (const { stream, id, seal } of answer.value) say(`entry ${stream} ${id} ${seal}`);
}

async function writePhoto(): Promise<void> {
  const data = crypto.getRandomValues(new Uint8Array(24 * 16 * 3));
  const bytes = await sharp(data, { raw: { width: 24, height: 16, channels: 3 } })
    .png()
    .toBuffer();
  const kept = await photos.keep(bytes, 'image/png');
  if (!kept.ok) throw new Error(kept.problem.code);
  say(`photo ${kept.value.photo}`);
}

if (mode === 'once') {
  say('begin');
  await writeEntries(100);
  await writePhoto();
  process.exit(0);
}
const forEver = async (work: () => Promise<void>) => {
  for (;;) await work();
};
await Promise.all([
  forEver(() => writeEntries(Math.floor(Math.random() * 3000))),
  forEver(() => writeEntries(20_000)),
  forEver(writePhoto),
  forEver(writePhoto),
]);
