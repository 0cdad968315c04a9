import { createHash } from 'node:crypto';
import { standingOf } from '../dossier/evolve.ts';
import type { RugEntry } from '../dossier/facts/index.ts';
import { latestVisit } from '../dossier/index.ts';
import { makePaper, paperKinds } from '../papers/index.ts';
import type { ArchiveFile } from '../ports/archiver.ts';
import type { RequestProblem } from '../text/httpWords.ts';
import { done, type Result } from '../units/index.ts';
import { photosIn } from './decideDrafts.ts';
import type { Actor, House } from './house.ts';
import { paperContext } from './papers.ts';
import { exportReadMe, sealCheckScript } from './sealCheck.ts';

export interface ExportedRug {
  /** A name for the file, of plain letters. */
  readonly name: string;
  readonly bytes: AsyncIterable<Uint8Array>;
}

/** Everything of one rug, packed so that a stranger can read and check it without this product. */
export async function exportRug(
  house: House,
  actor: Actor,
  rug: string,
): Promise<Result<ExportedRug, RequestProblem>> {
  const context = await paperContext(house, actor, rug);
  if (!context.ok) return context;
  const { entries, rug: standing, issuedAt } = context.value;
  const at = issuedAt;
  const text = (name: string, content: string): ArchiveFile => ({
    ...{ name, at, press: true },
    open: async () => new TextEncoder().encode(content),
  });
  const photographs = await photographFiles(house, entries, at);
  const { shown, unsound } = await shownPapers(house, entries, at);
  const number = String(standing.opened?.number ?? 0).padStart(4, '0');
  const title = `Dossier ${number}: ${standing.opened?.title ?? ''}`;
  const named = ({ name }: ArchiveFile) => ({ file: name, sha256: /[0-9a-f]{64}/.exec(name)?.[0] ?? '' });
  const index = { title, entries, photographs: photographs.map(named), papers: shown.map(named), unsound };
  const papers = paperKinds.flatMap(({ code }): readonly ArchiveFile[] => {
    // A hand-back that has not taken place is no evidence of one.
    if (code === 'return' && latestVisit(standing)?.end === null) return [];
    const paper = makePaper(code, context.value);
    if (!paper.ok) return [];
    const open = async (): Promise<Uint8Array> => {
      const printed = await house.printer.print(paper.value);
      if (!printed.ok) throw new Error(`${code}: ${printed.problem.facts.reason}`);
      return printed.value;
    };
    return [{ name: `papers/${code}.pdf`, at, press: false, open }];
  });
  return done({
    name: `dossier-${number}`,
    bytes: house.archiver.zip([
      text('READ-ME.txt', exportReadMe(title, standing.seal, unsound)),
      text('entries.json', JSON.stringify(index, null, 1)),
      text('check.mjs', sealCheckScript),
      ...photographs,
      ...shown,
      ...papers,
    ]),
  });
}

const endings = {
  'image/jpeg': 'jpg',
  'image/png': 'png',
  'image/webp': 'webp',
  'image/heic': 'heic',
} as const;

async function photographFiles(
  { photos }: House,
  entries: readonly RugEntry[],
  at: string,
): Promise<readonly ArchiveFile[]> {
  const names = [...new Set(entries.flatMap(({ fact }) => photosIn(fact)))];
  const described = await Promise.all(names.map((name) => photos.describe(name)));
  return described.flatMap((photo) => {
    if (photo === null) return [];
    const name = `photographs/${photo.photo}.${endings[photo.mediaType]}`;
    const open = async () => (await photos.read(photo.photo, 'original'))?.bytes ?? new Uint8Array();
    return [{ name, at, press: false, open }];
  });
}

/** A kept paper as it was shown; `unsound` where what lies there was altered, or cannot be read. */
async function keptAsShown({ keptPapers }: House, client: string, paper: string) {
  const bytes = await keptPapers.read(client, paper).catch(() => 'unsound' as const);
  if (bytes === null || bytes === 'unsound') return bytes;
  return createHash('sha256').update(bytes).digest('hex') === paper ? bytes : 'unsound';
}

/**
 * Papers that a consent names, where they are still kept: an erased client's are not. An unsound one is named,
 * not packed: it must not pass for the paper, nor keep all the rest from whoever asks for it.
 */
async function shownPapers(house: House, entries: readonly RugEntry[], at: string) {
  const consents = standingOf(entries).visits.flatMap(({ received, consent }) =>
    consent.kind === 'given' ? [{ client: received.client, paper: consent.given.paper }] : [],
  );
  const found = await Promise.all(
    consents.map(async ({ client, paper }) => ({
      file: `shown/${paper}.pdf`,
      bytes: await keptAsShown(house, client, paper),
    })),
  );
  return {
    shown: found.flatMap(({ file, bytes }): readonly ArchiveFile[] =>
      bytes === null || bytes === 'unsound'
        ? []
        : [{ name: file, at, press: false, open: async () => bytes }],
    ),
    unsound: found.flatMap(({ file, bytes }) => (bytes === 'unsound' ? [file] : [])),
  };
}
