import { measureCard } from '../app/cards.ts';
import { recordClient } from '../app/clients.ts';
import type { Actor, House } from '../app/house.ts';
import { showConsent } from '../app/papers.ts';
import { addFirstOwner, addPerson, changeSecret } from '../app/people.ts';
import { receiveConsignment } from '../app/receiveConsignment.ts';
import { recordEntries } from '../app/recordEntries.ts';
import { changeRule } from '../app/rulebook.ts';
import { recordShelf } from '../app/shelf.ts';
import { readWorkshop, recordWorkshop } from '../app/workshop.ts';
import {
  agreedPlan,
  latestVisit,
  type RugEntry,
  type RugFact,
  type RugStanding,
  standingOf,
  stepId,
} from '../dossier/index.ts';
import type { Photo } from '../ports/photos.ts';
import type { Problem, Result } from '../units/index.ts';
import { barMm, countedKnots } from './countedBacks.ts';
import { comparedPictures, cornersOf, type Darkroom, faceOf, gradedBlot, serial } from './darkroom.ts';
import { paintRug } from './paint/paintRug.ts';
import type { DemoRug } from './story/demoRug.ts';
import type { ByAnother, DemoPerson, Moment, View } from './story/moment.ts';
import { demoClients, demoPassphrase, demoPeople, demoRuleChange, demoSettings } from './story/people.ts';
import { rugsAtTheBench } from './story/rugsAtTheBench.ts';
import { rugsAwaitingWord } from './story/rugsAwaitingWord.ts';
import { rugsDone } from './story/rugsDone.ts';
import { rugsDriedBefore } from './story/rugsDriedBefore.ts';
import { rugsDrying } from './story/rugsDrying.ts';
import { rugsOnTheFloor } from './story/rugsOnTheFloor.ts';
import { rugsSetAside } from './story/rugsSetAside.ts';
import { rugUnderRescue } from './story/rugUnderRescue.ts';
import { demoShelf } from './story/shelf.ts';
import { pictured } from './story/telling.ts';
import { roomMoments } from './tellRoom.ts';

/** Every rug of the demo, in the order in which they came. */
export const demoRugs: readonly DemoRug[] = [
  ...rugsOnTheFloor,
  ...rugUnderRescue,
  ...rugsDriedBefore,
  ...rugsDrying,
  ...rugsAtTheBench,
  ...rugsAwaitingWord,
  ...rugsSetAside,
  ...rugsDone,
].sort((a, b) => b.receivedHoursAgo - a.receivedHoursAgo);

export interface DemoStage extends Darkroom {
  /** Sets the house's clock to an instant of the story. */
  readonly setClock: (instant: string) => void;
  /** The instant at which the demo is opened. */
  readonly opensAt: string;
  readonly told: (words: string) => void;
}

/** A pen stroke nobody wrote. */
const flourish = Array.from(
  { length: 40 },
  (_, i) => [0.1 + i * 0.02, 0.5 + 0.25 * Math.sin(i / 2.5)] as const,
);

export type Cast = { readonly [P in DemoPerson]: Actor };

export const must = <Value>(result: Result<Value, Problem>): Value => {
  if (result.ok) return result.value;
  throw new Error(
    `the demo's story is refused: ${result.problem.code} ${JSON.stringify(result.problem.facts)}`,
  );
};

export const hoursBefore = (instant: string, hours: number) =>
  new Date(Date.parse(instant) - hours * 3_600_000).toISOString();
const dayAfter = (instant: string, days: number) =>
  new Date(Date.parse(instant) + days * 86_400_000).toISOString().slice(0, 10);

/** Opens the workshop and hires everybody. */
async function hire({ house, setClock, opensAt }: DemoStage): Promise<Cast> {
  setClock(hoursBefore(opensAt, 3000));
  const { mirela, tobin, ines } = demoPeople;
  const code = 'demo';
  const opened = must(
    await addFirstOwner(house, code, {
      code,
      name: mirela.name,
      passphrase: demoPassphrase,
      workshopName: demoSettings.name ?? '',
    }),
  );
  const owner: Actor = { ...opened.person, proof: 'passphrase' };
  must(
    await recordWorkshop(house, owner.person, () => ({
      ok: true,
      value: [
        { type: 'SettingsChanged', settings: demoSettings },
        { type: 'PersonChanged', person: owner.person, name: mirela.name, roles: [...mirela.roles] },
      ],
    })),
  );
  must(await changeSecret(house, owner.person, null, { pin: mirela.pin }));
  for (const person of [tobin, ines]) {
    const added = {
      person: house.ids.next(),
      name: person.name,
      roles: [...person.roles],
      passphrase: demoPassphrase,
      pin: person.pin,
    };
    must(await addPerson(house, owner, added));
  }
  must(await changeRule(house, owner, demoRuleChange));
  must(await measureCard(house, owner, { serial, barMm }));
  const shelved = demoShelf((days) => dayAfter(opensAt, days));
  const drafts = shelved.map((fact) => ({ id: house.ids.next(), fact })) as never;
  setClock(hoursBefore(opensAt, 2000));
  must(await recordShelf(house, owner, { drafts }));
  const { people } = await readWorkshop(house);
  const actor = (name: string): Actor => {
    const person = Object.values(people).find((one) => one.name === name);
    if (person === undefined) throw new Error(`nobody called ${name} was hired`);
    return { ...person, proof: 'passphrase' };
  };
  return { mirela: actor(mirela.name), tobin: actor(tobin.name), ines: actor(ines.name) };
}

async function photographed({ house, rasterise }: DemoStage, rug: DemoRug): Promise<readonly RugFact[]> {
  const facts: RugFact[] = [];
  for (const side of ['face', 'back'] as const) {
    const kept: Photo = must(
      await house.photos.keep(
        await rasterise(
          side === 'face' ? faceOf(rug.design, house, 'at the door') : paintRug(rug.design, side),
        ),
        'image/jpeg',
      ),
    );
    facts.push(pictured(kept.photo, kept.widthPx, kept.heightPx, side));
    if (side === 'face')
      facts.push({ type: 'CornersTapped', photo: kept.photo, corners: cornersOf(rug.design) });
  }
  return facts;
}

async function receive(stage: DemoStage, cast: Cast, rug: DemoRug, known: Set<string>): Promise<string> {
  const { house, setClock, opensAt } = stage;
  setClock(hoursBefore(opensAt, rug.receivedHoursAgo));
  const id = house.ids.next();
  const client = `demo-${rug.client}`;
  const added = { type: 'ClientAdded', ...demoClients[rug.client] } as const;
  const { promisedInDays } = rug;
  const consignment = `demo-${rug.consignment}`;
  const received: RugFact = {
    type: 'RugReceived',
    visit: house.ids.next(),
    consignment,
    client,
    tag: rug.tag,
    scope: ['wash'],
    route: 'rug in use',
    reason: 'General wash.',
    authority: 'owner',
    ...(promisedInDays === undefined ? {} : { promisedFor: dayAfter(opensAt, promisedInDays) }),
    ...rug.received,
  };
  const facts: RugFact[] = [
    { type: 'DossierOpened', number: 1, title: rug.title },
    received,
    ...(await photographed(stage, rug)),
  ];
  must(
    await receiveConsignment(house, cast.ines, {
      consignment,
      client: known.has(client) ? { client } : { client, added },
      rugs: [{ rug: id, drafts: facts.map((fact) => ({ id: house.ids.next(), fact })) as never }],
    }),
  );
  known.add(client);
  return id;
}

/** What a fact must be able to point to: the consent paper that was shown, the signature at the hand-back. */
async function withEvidence(
  house: House,
  actor: Actor,
  rug: string,
  entries: readonly RugEntry[],
  fact: RugFact,
): Promise<RugFact> {
  if (fact.type === 'ConsentGiven')
    return { ...fact, paper: must(await showConsent(house, actor, rug)).sha256 };
  const client = latestVisit(standingOf(entries))?.received.client;
  if (fact.type !== 'RugReturned' || client === undefined) return fact;
  const signature = house.ids.next();
  const signed = {
    type: 'SignatureTaken',
    signature,
    name: fact.to,
    statement: 'I have received the rug named above.',
    strokes: [flourish],
  } as const;
  must(
    await recordClient(house, actor, client, {
      expectedRevision: 0,
      drafts: [{ id: signature, fact: signed as never }],
    }),
  );
  return { ...fact, signature };
}

/** When the dwell of a step that is finished is over; nobody in the story cuts one short. */
function dwellEnd(standing: RugStanding, fact: RugFact): number {
  if (fact.type !== 'StepDone') return 0;
  const started = latestVisit(standing)?.steps.find(({ step }) => step === fact.step)?.started?.when;
  const step = agreedPlan(standing)?.steps.find((one) => stepId(one) === fact.step);
  return started === undefined ? 0 : Date.parse(started) + (step?.dwellMinutes ?? 0) * 60_000;
}

/** Facts of one item of a moment, as they stand when it is told. */
async function factsOf(
  stage: DemoStage,
  { design }: DemoRug,
  given: Moment['facts'][number],
  view: View,
): Promise<readonly (RugFact | ByAnother)[]> {
  if (typeof given === 'function') {
    const made = given(view);
    return made === null ? [] : [made];
  }
  if (!('kind' in given)) return [given];
  switch (given.kind) {
    case 'photographed blot':
      return [await gradedBlot(stage, given)];
    case 'photographed count':
      return [await countedKnots(stage, given)];
    case 'compared pictures':
      return comparedPictures(stage, design, view.standing, given);
  }
}

async function tellMoment(
  stage: DemoStage,
  cast: Cast,
  [rug, of]: readonly [id: string, of: DemoRug],
  told: Moment,
): Promise<void> {
  const { house, setClock, opensAt } = stage;
  let clockMs = Date.parse(hoursBefore(opensAt, told.hoursAgo));
  const read = async () => (await house.ledger.read(`rug/${rug}`)) as readonly RugEntry[];
  for (const given of told.facts) {
    for (let isTold = false; !isTold; ) {
      const { settings } = await readWorkshop(house);
      const view = { standing: standingOf(await read()), settings, now: new Date(clockMs).toISOString() };
      const made = await factsOf(stage, of, given, view);
      // What another had to record first leaves the teller's own part to be told.
      isTold = !made.some((one) => 'by' in one);
      for (const one of made) {
        const [by, fact] = 'by' in one ? [one.by, one.fact] : [told.by, one];
        const entries = await read();
        clockMs = Math.max(clockMs, dwellEnd(view.standing, fact));
        setClock(new Date(clockMs).toISOString());
        const evident = await withEvidence(house, cast[by], rug, entries, fact);
        must(
          await recordEntries(house, cast[by], rug, {
            expectedRevision: entries.length,
            drafts: [{ id: house.ids.next(), fact: evident }] as never,
          }),
        );
        // Things recorded together are still written one after another.
        clockMs += 10_000;
      }
    }
  }
}

/**
 * Tells the whole demo into an empty house through the same use cases people use, so that nothing in it
 * could not have been recorded by hand.
 */
export async function tellDemo(stage: DemoStage): Promise<void> {
  const cast = await hire(stage);
  const known = new Set<string>();
  const moments = [...roomMoments(stage, cast)];
  for (const rug of demoRugs) {
    let id = '';
    moments.push({
      hoursAgo: rug.receivedHoursAgo,
      tell: async () => {
        id = await receive(stage, cast, rug, known);
        stage.told(`${rug.tag}  ${rug.title}`);
      },
    });
    for (const told of rug.story) {
      moments.push({ hoursAgo: told.hoursAgo, tell: () => tellMoment(stage, cast, [id, rug], told) });
    }
  }
  for (const { tell } of moments.sort((a, b) => b.hoursAgo - a.hoursAgo)) await tell();
}
