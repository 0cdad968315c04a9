import type { RugFact, RugFactOf, RugFactType } from '../../../dossier/index.ts';
import { dryingHeatWords } from '../../../text/dryingHeatWords.ts';
import { dayWords } from '../../kit/index.ts';
import {
  counted,
  figure,
  massWords,
  minutesWords,
  moneyWords,
  percentWords,
  sizeWords,
  temperatureWords,
} from '../figures.ts';
import { claimWords } from '../identify/claimWords.ts';

/** Names of things a fact only knows by id. */
export interface Around {
  readonly colour: (id: string) => string;
  readonly step: (id: string) => string;
  readonly mark: (id: string) => string;
}

/** What an entry says in the history: the act, and the words under it. */
export interface Told {
  readonly did: string;
  readonly words?: string;
}

const told = (did: string, ...words: readonly (string | undefined)[]): Told => {
  const under = words.filter((word) => word !== undefined && word !== '').join(' · ');
  return under === '' ? { did } : { did, words: under };
};

const reading = (fact: RugFactOf<'DyeTested'>): string =>
  fact.reading.kind === 'graded' ? `grade ${fact.reading.staining}` : 'unclear';

/** What stands behind a reading: the control blotter, the interval of a photograph, or why it is unclear. */
const behind = ({ reading: read }: RugFactOf<'DyeTested'>): string => {
  if (read.kind === 'unclear') return read.why;
  if (read.by === 'eye') return `control ${read.control}`;
  const { lowest, highest } = read.gradeInterval;
  return `from a photograph, 95 %: ${lowest === highest ? lowest : `${lowest} to ${highest}`}`;
};

const liquidFacts = (fact: {
  readonly ph?: number | undefined;
  readonly temperatureC?: number | undefined;
}): readonly (string | undefined)[] => [
  fact.ph === undefined ? undefined : `pH ${figure(fact.ph, 2)}`,
  fact.temperatureC === undefined ? undefined : temperatureWords(fact.temperatureC),
];

type Tellers = { readonly [Type in RugFactType]: (fact: RugFactOf<Type>, around: Around) => Told };

const tellers: Tellers = {
  DossierOpened: ({ number, title }) => told(`opened dossier ${number}`, title),
  RugReceived: ({ tag, scope, reason }) => told(`received the rug, tag ${tag}`, scope.join(', '), reason),
  RugMeasured: (fact) => told(`measured ${sizeWords(fact)}`, fact.occasion),
  RugWeighed: (fact) =>
    told(
      `weighed ${massWords(fact.massKg)}`,
      fact.occasion,
      fact.airRh === undefined ? 'air not measured' : `${percentWords(fact.airRh)} RH`,
      fact.restedADay ? 'after a day in this air' : 'not a day in this air',
    ),
  PhotographTaken: ({ shows, caption }) => told(`photographed the ${shows}`, caption),
  CornersTapped: () => told('tapped the four corners on a photograph'),
  MarkRecorded: (fact) =>
    told(`recorded a mark: ${fact.word}`, `grade ${fact.grade}`, fact.side, fact.activity, fact.note),
  ConditionSurveyed: ({ sides, light, limits }) =>
    told(
      `looked it over, ${sides}`,
      `light: ${light}`,
      limits === undefined ? undefined : `not seen: ${limits}`,
    ),
  RugIdentified: ({ claims }) =>
    told(
      'said what it is',
      ...claims.map((claim) => {
        const { name, value } = claimWords(claim);
        return `${name.toLowerCase()} ${value} (${claim.evidence}, ${claim.confidence})`;
      }),
    ),
  FindingNoted: ({ finding, certainty, at, note }) => told(`noted ${finding}: ${certainty}`, at, note),
  ColoursNamed: ({ colours }) =>
    told(`named ${counted(colours.length, 'colour')}`, colours.map(({ name }) => name).join(', ')),
  KnotsCounted: ({ places }) => told(`counted knots at ${counted(places.length, 'place')}`),
  FoundationTested: ({ method, result, where, note }) =>
    told(`tested the foundation: ${result}`, method, where, note),
  DyeTested: (fact, around) =>
    told(
      `read ${around.colour(fact.colour)}, ${fact.side}, ${fact.liquid}: ${reading(fact)}`,
      ...liquidFacts(fact),
      fact.atUrinePlace ? 'at the marked place' : undefined,
      behind(fact),
      fact.note,
    ),
  DyeTestStarted: (fact, around) =>
    told(
      `laid a blot on ${around.colour(fact.colour)}, ${fact.side}`,
      fact.liquid,
      minutesWords(fact.minutes),
    ),
  DyeTestRefused: (fact, around) =>
    told(
      `client refused the test of ${around.colour(fact.colour)}`,
      fact.words,
      fact.signed ? 'signed' : 'not signed',
    ),
  BathPlanned: ({ purpose, agents, ph }) =>
    told(
      `plans a bath: ${purpose}`,
      agents.join(', '),
      ph === undefined ? 'pH not known' : `pH ${figure(ph)}`,
    ),
  BathDropped: () => told('dropped a planned bath'),
  DryingExpected: ({ hours, why }) => told(`expects ${figure(hours)} h to dry`, 'estimated by hand', why),
  DryingForecast: ({ hours, lookedHours, among }) =>
    told(
      hours === null
        ? `forecast: not dry within ${figure(lookedHours)} h`
        : `forecast: dry within ${figure(hours)} h`,
      'nine of ten such rugs are',
      `beside ${among.length} that hung there`,
    ),
  PlanAgreed: ({ method, fingerprint, note }) =>
    told(`put the plan on record: ${method}`, `seal ${fingerprint.slice(0, 8)}`, note),
  PriceQuoted: ({ lines, notToExceed }) =>
    told(`quoted, at most ${moneyWords(notToExceed)}`, lines.map(({ words }) => words).join(', ')),
  ConsentGiven: ({ agreed, notToExceed }) =>
    told('client agreed', agreed.how, `at most ${moneyWords(notToExceed)}`),
  ConsentRefused: ({ what, words, signed }) =>
    told(`client refused ${what}`, words, signed ? 'signed' : 'not signed'),
  CorrectiveAimAgreed: ({ aim }) => told('agreed what is to be put right', aim),
  ConsentWithdrawn: ({ words }) => told('client took back the consent', words),
  OverrideGranted: ({ rule, reason }) => told(`took responsibility for ${rule}`, reason),
  SignedOff: ({ as, name, about }) => told(`signed off as ${as}: ${name}`, about),
  StepStarted: ({ step, helpers }, around) => told(`started: ${around.step(step)}`, helpers),
  StepDone: ({ step, note, lot, early }, around) =>
    told(
      `finished: ${around.step(step)}`,
      early === undefined ? undefined : `before its dwell was over: ${early}`,
      lot === undefined ? undefined : `lot ${lot}`,
      note,
    ),
  BathMeasured: (fact) =>
    told('measured the bath', ...liquidFacts(fact), clothWords(fact.whiteClothGrade), fact.runOff),
  RinseMeasured: (fact) =>
    told(
      'measured the rinse',
      ...liquidFacts(fact),
      fact.conductivityUsPerCm === undefined ? undefined : `${figure(fact.conductivityUsPerCm, 0)} µS/cm`,
      clothWords(fact.whiteClothGrade),
      fact.runOff,
    ),
  HandLent: ({ step }, around) => told(`stood ready to help: ${around.step(step)}`),
  LengthChecked: ({ lengthMm, widthMm }) =>
    told(
      'checked its size under work',
      lengthMm === undefined ? undefined : `length ${figure(lengthMm / 10)} cm`,
      widthMm === undefined ? undefined : `width ${figure(widthMm / 10)} cm`,
    ),
  SpotTreated: (fact, around) =>
    told(
      `treated ${around.mark(fact.mark)}, ${fact.golden}: ${fact.outcome}`,
      fact.agents.join(' and '),
      ...liquidFacts(fact),
      fact.minutes === undefined ? undefined : minutesWords(fact.minutes),
      fact.lot === undefined ? undefined : `lot ${fact.lot}`,
      fact.note,
    ),
  OldTreatmentTold: ({ agents, mark, toldBy, note }, around) =>
    told(
      `noted what others used before: ${agents.join(' and ')}`,
      mark === undefined ? 'all over the rug' : around.mark(mark),
      `told by ${toldBy}`,
      note,
    ),
  ResidueAnswered: ({ agent, mark, reason }, around) =>
    told(`held ${agent} to be out of the rug`, mark === undefined ? undefined : around.mark(mark), reason),
  SpotAired: ({ smell }) => told('aired the solvent out', `smell: ${smell}`),
  StainAnswered: ({ mark, question, answer }, around) =>
    told(`asked of ${around.mark(mark)}: ${question.replaceAll('-', ' ')}`, answer.replaceAll('-', ' ')),
  FlowBegun: ({ flow, mark, where, why }, around) =>
    told(
      `began the flow ${flow.replaceAll('-', ' ')} by hand`,
      mark === undefined ? where : around.mark(mark),
      why,
    ),
  FlowLogged: ({ flow, step, choice, conductivityUsPerCm, note }) =>
    told(
      `${flow.replaceAll('-', ' ')}: ${step.replaceAll('-', ' ')}`,
      choice?.replaceAll('-', ' '),
      conductivityUsPerCm === undefined ? undefined : `${figure(conductivityUsPerCm, 0)} µS/cm`,
      note,
    ),
  StopCalled: ({ condition, note }) => told(`called a stop: ${condition}`, note),
  StopCleared: ({ how }) => told('cleared the stop', how),
  DryingStarted: ({ posture, place, heated }) =>
    told(`put it to dry, ${posture}`, place, dryingHeatWords(heated)),
  RugTurned: ({ posture }) => told(`turned it, now ${posture}`),
  DryingReading: (fact) =>
    told(
      'took a drying reading',
      fact.massKg === undefined ? undefined : massWords(fact.massKg),
      fact.meter === undefined
        ? undefined
        : `meter ${fact.meter.map(({ reading: r }) => figure(r)).join(', ')}`,
      fact.pocketRh === undefined ? undefined : `pocket ${percentWords(fact.pocketRh)}`,
      fact.touch,
    ),
  DryAccepted: ({ standard, note }) => told('accepted it as dry', `standard ${standard}`, note),
  FinishingDone: ({ works, note }) => told(`finished: ${works.join(', ')}`, note),
  RugInspected: ({ marks, odour, colour, note }) =>
    told(`inspected ${counted(marks.length, 'mark')}`, `odour ${odour}`, `colour ${colour}`, note),
  ColoursCompared: ({ sentence }) => told('compared the colours before and after', sentence),
  DepositTaken: ({ amount, means }) => told(`took a deposit of ${moneyWords(amount)}`, means),
  InvoiceIssued: ({ number }) => told(`issued invoice ${number}`),
  PaymentTaken: ({ amount, means }) => told(`took a payment of ${moneyWords(amount)}`, means),
  RugReturned: ({ to, difference }) => told(`handed it back to ${to}`, difference),
  VisitDeclined: ({ wishOf, reason }) => told(`the ${wishOf} ended the visit without the work`, reason),
  RugMoved: ({ place }) => told(`moved it to ${place}`),
  SentOut: ({ to, purpose, backBy }) =>
    told(`sent it out to ${to}`, purpose, backBy && `back by ${dayWords(backBy)}`),
  CameBack: ({ condition }) => told('it came back', condition),
  Quarantined: ({ why, note }) => told(`put it in quarantine: ${why}`, note),
  QuarantineReleased: ({ treatment, inspected }) => told('released it from quarantine', treatment, inspected),
  IncidentReported: ({ what, action, clientTold }) =>
    told(`reported an incident: ${what}`, action, clientTold ? 'client told' : 'client not yet told'),
  ReceiptSigned: () => told('had the receipt signed'),
  IncidentTold: ({ how }) => told('told the client of the incident', how),
  StorageDue: ({ from, charge }) =>
    told(`storage is due from ${dayWords(from)}`, charge && moneyWords(charge)),
  Unclaimed: ({ since, note }) => told(`called it unclaimed since ${dayWords(since)}`, note),
  RugDusted: ({ pass, side, soilG }) =>
    told(`dusted the ${side}, pass ${pass}`, `${figure(soilG, 0)} g of soil`),
  NoteAdded: ({ note }) => told('wrote a note', note),
  EntryWithdrawn: ({ reason }) => told('withdrew an entry', reason),
};

const clothWords = (grade: string | undefined): string | undefined =>
  grade === undefined ? undefined : `white cloth ${grade}`;

/** A fact as a sentence without its subject: "read Red, face, cold water: grade 4". */
export const entryWords = (fact: RugFact, around: Around): Told =>
  (tellers[fact.type] as (fact: RugFact, around: Around) => Told)(fact, around);
