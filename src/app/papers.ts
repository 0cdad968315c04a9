import { clientStanding } from '../dossier/clientFacts.ts';
import { standingOf } from '../dossier/evolve.ts';
import type { RugEntry } from '../dossier/facts/index.ts';
import type { ClientErased } from '../dossier/recordProblem.ts';
import { type AirAt, roomStandingOf } from '../dossier/roomStanding.ts';
import { latestVisit, type VisitStanding } from '../dossier/standing.ts';
import { isWet } from '../dossier/wetting.ts';
import {
  type ConsignedRug,
  makePaper,
  type Paper,
  type PaperContext,
  type PaperHasNoGround,
  type PaperKind,
  type PaperNotPrinted,
} from '../papers/index.ts';
import { tagLabel, tagLabelWidthMm } from '../papers/tagLabel.ts';
import { rangeText } from '../text/amountText.ts';
import { dryAskedWords, dryFoundWords } from '../text/dryWords.ts';
import type { RequestProblem } from '../text/httpWords.ts';
import { assumedWaterWords, bathAcidWords, mixLineWords } from '../text/mixWords.ts';
import { problemWords } from '../text/problemWords.ts';
import { shelfGapWords } from '../text/shelfGapWords.ts';
import { done, type Result, refused } from '../units/index.ts';
import type { Actor, House } from './house.ts';
import { readShelf } from './shelf.ts';
import { readWorkshop } from './workshop.ts';

type Refusal = RequestProblem | ClientErased | PaperHasNoGround | PaperNotPrinted;

/** Every rug that came with a consignment, with the visit it came for, by dossier number. */
async function consigned({ ledger }: House, consignment: string): Promise<readonly ConsignedRug[]> {
  const rows = await ledger.list({ kind: 'rug', consignment, limit: 100 });
  const rugs = await Promise.all(rows.map(async ({ stream }) => standingOf(await ledger.read(stream))));
  return rugs
    .flatMap((rug) => {
      const visit = rug.visits.findLast(({ received }) => received.consignment === consignment);
      return visit === undefined ? [] : [{ rug, visit }];
    })
    .sort((one, other) => (one.rug.opened?.number ?? 0) - (other.rug.opened?.number ?? 0));
}

/** Papers that somebody acts on: they must not look fresher than the day on which they are printed. */
const actedOn: readonly PaperKind[] = ['consent', 'work-order'];

/** The beginning of today for papers that are acted on, so that tests that ran out by now count as run out. */
const issuedAt = (kind: PaperKind | undefined, lastEntryAt: string, now: string): string => {
  const today = `${now.slice(0, 10)}T00:00:00.000Z`;
  return kind !== undefined && actedOn.includes(kind) && today > lastEntryAt ? today : lastEntryAt;
};

/**
 * Everything a rug's papers are made from. A paper is dated with the dossier's last entry, not with the
 * moment of printing: as long as nothing is recorded the same paper is the same bytes, those that are
 * acted on for one day.
 */
export async function paperContext(
  house: House,
  actor: Actor,
  rug: string,
  kind?: PaperKind,
): Promise<Result<PaperContext, RequestProblem>> {
  const entries = (await house.ledger.read(`rug/${rug}`)) as readonly RugEntry[];
  const standing = standingOf(entries);
  const visit = latestVisit(standing);
  const last = entries.at(-1);
  if (visit === null || last === undefined) return refused('rug-unknown', { rug });
  const roomAir =
    kind === undefined || kind === 'drying-log' ? await airWhileDrying(house, visit, last.at) : [];
  return done({
    ...{ rug: standing, visit, entries, by: actor.person },
    ...(roomAir.length === 0 ? {} : { roomAir }),
    issuedAt: issuedAt(kind, last.at, house.clock.now()),
    timeZone: house.timeZone,
    workshop: await readWorkshop(house),
    shelf: await readShelf(house),
    client: clientStanding(await house.ledger.read(`client/${visit.received.client}`)),
    consignment: await consigned(house, visit.received.consignment),
    words: {
      problem: problemWords,
      dryAsked: (code) => dryAskedWords[code],
      mixLine: mixLineWords,
      assumedWater: assumedWaterWords,
      bathAcid: bathAcidWords,
      shelfGap: (gap) => shelfGapWords(gap, isWet(visit)),
      measuredOut: rangeText,
      dryFound: dryFoundWords,
    },
  });
}

/** What was read of the air in the rooms where a rug hung, from its first pole until it was accepted as dry. */
async function airWhileDrying(
  { ledger }: House,
  { dryingPlaces, dryAccepted }: VisitStanding,
  lastAt: string,
): Promise<readonly AirAt[]> {
  const until = dryAccepted?.when ?? lastAt;
  const stays = dryingPlaces.map(({ room, when }, index) => ({
    ...{ room, from: when, until: dryingPlaces[index + 1]?.when ?? until },
  }));
  const read = stays.map(async (stay) => {
    if (stay.room === undefined) return [];
    const { room } = roomStandingOf(await ledger.read(`room/${stay.room}`));
    return room.filter(({ when }) => when >= stay.from && when < stay.until);
  });
  return (await Promise.all(read)).flat();
}

/** One paper of a rug as PDF. */
export async function printPaper(
  house: House,
  actor: Actor,
  rug: string,
  kind: PaperKind,
): Promise<Result<Uint8Array, Refusal>> {
  const context = await paperContext(house, actor, rug, kind);
  if (!context.ok) return context;
  const paper = makePaper(kind, context.value);
  return paper.ok ? house.printer.print(paper.value) : paper;
}

/**
 * The consent paper as it is put to the client: its bytes are kept, so that a consent, which names their
 * hash, can always be held against what was shown.
 */
export async function showConsent(
  house: House,
  actor: Actor,
  rug: string,
): Promise<Result<{ readonly sha256: string; readonly bytes: Uint8Array }, Refusal>> {
  const context = await paperContext(house, actor, rug, 'consent');
  if (!context.ok) return context;
  const { client } = context.value.visit.received;
  // Nobody is left to agree, and a paper that names nobody binds nobody.
  if (context.value.client?.kind === 'erased')
    return refused('client-erased', { stream: `client/${client}` });
  const paper = makePaper('consent', context.value);
  const printed = paper.ok ? await house.printer.print(paper.value) : paper;
  if (!printed.ok) return printed;
  const bytes = printed.value;
  return done({ bytes, sha256: await house.keptPapers.keep(client, bytes) });
}

/** The receipt of a whole consignment. */
export async function printReceipt(
  house: House,
  actor: Actor,
  consignment: string,
): Promise<Result<Uint8Array, Refusal>> {
  const [row] = await house.ledger.list({ kind: 'rug', consignment, limit: 1 });
  return row === undefined
    ? refused('consignment-unknown', { consignment })
    : printPaper(house, actor, row.stream.slice('rug/'.length), 'receipt');
}

/** The label that goes on the rug: a code that opens its dossier, and the tag large enough to read from afar. */
export async function printLabel(
  house: House,
  actor: Actor,
  rug: string,
  address: string,
): Promise<Result<Uint8Array, Refusal>> {
  const context = await paperContext(house, actor, rug);
  if (!context.ok) return context;
  const { workshop, issuedAt, visit, rug: standing } = context.value;
  const { settings } = workshop;
  const number = String(standing.opened?.number ?? 0).padStart(4, '0');
  const link = `${address}/rugs/${rug}`;
  const label: Paper = {
    ...{ title: `Tag ${visit.received.tag}`, size: settings.paper, language: 'en', issuedAt },
    workshop: { name: settings.name, lines: [] },
    number: `TL-${number}-${standing.visits.length}`,
    rug: `Dossier ${number} · ${standing.opened?.title ?? ''}`,
    date: issuedAt.slice(0, 10),
    person: actor.name,
    seal: standing.seal,
    parts: [
      {
        kind: 'drawing',
        svg: tagLabel({
          ...{ tag: visit.received.tag, number, title: standing.opened?.title ?? '' },
          ...{ workshop: settings.name, code: house.codes.draw(link) },
        }),
        caption: `Opens the dossier: ${link}`,
        described: `Tag ${visit.received.tag}, with a code that opens dossier ${number}.`,
        widthMm: tagLabelWidthMm,
      },
      {
        kind: 'text',
        text: 'Cut out, put into a wash-proof sleeve and tie it to the fringe or a corner loop.',
        tone: 'soft',
      },
    ],
  };
  return house.printer.print(label);
}
