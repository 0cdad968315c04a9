import type { RugFact, RugFactOf, RugFactType } from '../dossier/index.ts';
import { claimWords } from './claimWords.ts';
import {
  dayWords,
  figure,
  heatWords,
  humidityWords,
  lengthsWords,
  moneyWords,
  temperatureWords,
} from './measureWords.ts';

/** Names of what a fact only knows by its id. */
export interface FactNames {
  readonly colour: (id: string) => string;
  readonly mark: (id: string) => string;
  readonly step: (id: string) => string;
}

type Tellers = { readonly [Type in RugFactType]: (fact: RugFactOf<Type>, names: FactNames) => string };

/** Parts of a line that are there, joined. */
const said = (...parts: readonly (string | undefined | false)[]): string =>
  parts.filter((part) => typeof part === 'string' && part !== '').join('; ');

const degrees = (celsius: number | undefined) =>
  celsius === undefined ? undefined : temperatureWords(celsius);
const acid = (ph: number | undefined) => (ph === undefined ? undefined : `pH ${figure(ph, 2)}`);
const damp = (rh: number | undefined) => (rh === undefined ? undefined : humidityWords(rh));
const kilograms = (kg: number | undefined) => (kg === undefined ? undefined : `${figure(kg, 2)} kg`);
const pictures = (photos: readonly string[]) =>
  photos.length === 0 ? undefined : `${photos.length} ${photos.length === 1 ? 'photograph' : 'photographs'}`;

/** What a blot reads, with the interval where a photograph gave one. */
export const readingWords = (reading: RugFactOf<'DyeTested'>['reading']): string => {
  if (reading.kind === 'unclear') return `unclear, ${reading.why}`;
  if (reading.by === 'eye') return `grade ${reading.staining}`;
  return `grade ${reading.staining} from a photograph (95 %: ${intervalWords(reading.gradeInterval)})`;
};

/** `3 to 3-4`, or the one grade where both ends are the same. */
export const intervalWords = ({
  lowest,
  highest,
}: {
  readonly lowest: string;
  readonly highest: string;
}): string => (lowest === highest ? lowest : `${lowest} to ${highest}`);

const tellers: Tellers = {
  DossierOpened: ({ number, title }) => `Dossier ${number} opened: ${title}`,
  RugReceived: ({ tag, scope, route, reason }) =>
    said(`Received, tag ${tag}, for ${scope.join(', ')}`, route, reason),
  RugMeasured: ({ occasion, lengthsMm, widthsMm, uncertaintyMm }) =>
    `Measured (${occasion}): lengths ${lengthsWords(lengthsMm)}, widths ${lengthsWords(widthsMm)}, ± ${figure(uncertaintyMm / 10)} cm an end`,
  RugWeighed: ({ massKg, airRh, airC, occasion, restedADay, confirmedUnusual }) =>
    said(
      `Weighed (${occasion}): ${figure(massKg, 2)} kg`,
      damp(airRh),
      degrees(airC),
      restedADay ? 'after a day in this air' : 'not a day in this air',
      confirmedUnusual === true && 'unusual mass confirmed',
    ),
  PhotographTaken: ({ shows, occasion, caption }) => said(`Photograph (${occasion}): ${shows}`, caption),
  CornersTapped: () => 'Corners tapped on a photograph',
  ConditionSurveyed: ({ occasion, sides, light, limits }) =>
    said(`Looked over (${occasion}): ${sides}`, light, limits),
  MarkRecorded: (mark, names) =>
    said(
      `Mark ${names.mark(mark.mark)}: ${mark.word}, ${mark.side}, grade ${mark.grade}, ${mark.activity}`,
      mark.stain,
      mark.cause,
      mark.note,
    ),
  RugIdentified: ({ claims }) =>
    claims
      .map((claim) => `${claim.about}: ${claimWords(claim)} (${claim.confidence}; ${claim.evidence})`)
      .join('\n'),
  FindingNoted: ({ finding, certainty, at, evidence, note }) =>
    said(`Finding: ${finding}, ${certainty} (${evidence})`, at, note),
  ColoursNamed: ({ colours }) =>
    `Colours: ${colours.map(({ name, kind, dyeClass }) => `${name} (${kind}, dye ${dyeClass})`).join(', ')}`,
  KnotsCounted: ({ places, counted, nodesPerKnot }) =>
    `Knots counted ${counted === 'by hand' ? 'by hand' : 'on photographs'} at ${places.length} ${places.length === 1 ? 'place' : 'places'}, ${nodesPerKnot} ${nodesPerKnot === 1 ? 'node' : 'nodes'} per knot`,
  FoundationTested: ({ method, result, where, note }) =>
    said(`Foundation, ${method}: ${result}, ${where}`, note),
  DyeTested: ({ colour, side, liquid, reading, ph, temperatureC, minutes }, names) =>
    said(
      `Blot of ${names.colour(colour)}, ${side}, ${liquid}: ${readingWords(reading)}`,
      acid(ph),
      degrees(temperatureC),
      minutes === undefined ? undefined : `${figure(minutes, 0)} min`,
    ),
  DyeTestStarted: ({ colour, side, liquid, minutes }, names) =>
    `Blot laid: ${names.colour(colour)}, ${side}, ${liquid}, ${figure(minutes, 0)} min`,
  DyeTestRefused: ({ colour, words, signed }, names) =>
    said(`Client refuses the test of ${names.colour(colour)}: ${words}`, signed ? 'signed' : 'not signed'),
  BathPlanned: ({ purpose, agents, ph }) =>
    said(`Bath planned: ${purpose}, of ${agents.join(', ')}`, acid(ph)),
  BathDropped: () => 'A planned bath dropped',
  DryingExpected: ({ hours, why }) =>
    said(`Expected to be dry in ${figure(hours)} h (estimated by hand)`, why),
  DryingForecast: ({ hours, lookedHours, among }) =>
    hours === null
      ? `Forecast: not dry within ${figure(lookedHours)} h of first wetting, beside ${among.length} rugs`
      : `Forecast: dry within ${figure(hours)} h of first wetting in nine of ten, beside ${among.length} rugs`,
  CorrectiveAimAgreed: ({ aim }) => `Corrective aim agreed: ${aim}`,
  PlanAgreed: ({ method, rulebook, fingerprint, note }) =>
    said(`Plan put on record: ${method}, rulebook ${rulebook}`, `fingerprint ${fingerprint}`, note),
  PriceQuoted: ({ lines, notToExceed }) =>
    `Price quoted: ${lines.length} lines, not to exceed ${moneyWords(notToExceed)}`,
  ConsentGiven: ({ agreed, plan, notToExceed }) =>
    said(`Client agreed, ${agreed.how}, not to exceed ${moneyWords(notToExceed)}`, `plan ${plan}`),
  ConsentRefused: ({ what, words, signed }) =>
    said(`Client refused ${what}: ${words}`, signed ? 'signed' : 'not signed'),
  ConsentWithdrawn: ({ words }) => `Client took the agreement back: ${words}`,
  OverrideGranted: ({ rule, reason }) => `Rule ${rule} set aside: ${reason}`,
  SignedOff: ({ as, name, about }) => `Signed off by ${as} ${name}: ${about}`,
  RugDusted: ({ pass, side, soilG, minutes }) =>
    said(
      `Dusted, pass ${pass}, ${side}: ${figure(soilG)} g of soil`,
      minutes === undefined ? undefined : `${figure(minutes, 0)} min`,
    ),
  StepStarted: ({ step, wets, helpers }, names) =>
    said(`Started: ${names.step(step)}`, wets && 'wets the rug', helpers),
  StepDone: ({ step, note, lot, early }, names) =>
    said(
      `Done: ${names.step(step)}`,
      early === undefined ? undefined : `before its dwell was over: ${early}`,
      lot === undefined ? undefined : `lot ${lot}`,
      note,
    ),
  BathMeasured: ({ ph, temperatureC, whiteClothGrade, runOff, photos }) =>
    said(
      'Bath measured',
      acid(ph),
      degrees(temperatureC),
      whiteClothGrade === undefined ? undefined : `white cloth ${whiteClothGrade}`,
      runOff,
      pictures(photos),
    ),
  RinseMeasured: ({ ph, conductivityUsPerCm, temperatureC, foam, runOff }) =>
    said(
      'Rinse measured',
      acid(ph),
      conductivityUsPerCm === undefined ? undefined : `${figure(conductivityUsPerCm, 0)} µS/cm`,
      degrees(temperatureC),
      foam === undefined ? undefined : `foam ${foam}`,
      runOff,
    ),
  HandLent: ({ step }, names) => `Stood ready to help: ${names.step(step)}`,
  LengthChecked: ({ lengthMm, widthMm }) =>
    said(
      'Size checked under work',
      lengthMm === undefined ? undefined : `length ${figure(lengthMm / 10)} cm`,
      widthMm === undefined ? undefined : `width ${figure(widthMm / 10)} cm`,
    ),
  SpotTreated: ({ golden, agents, ph, temperatureC, minutes, outcome, lot, note, photos }) =>
    said(
      `Stain treated, ${golden}: ${outcome}`,
      agents.join(' and '),
      acid(ph),
      degrees(temperatureC),
      minutes === undefined ? undefined : `${figure(minutes)} min`,
      lot === undefined ? undefined : `lot ${lot}`,
      note,
      pictures(photos),
    ),
  OldTreatmentTold: ({ agents, mark, toldBy, note }, names) =>
    said(
      `Treated by others before: ${agents.join(', ')}${mark === undefined ? '' : ` at mark ${names.mark(mark)}`}`,
      `told by ${toldBy}`,
      note,
    ),
  ResidueAnswered: ({ agent, mark, reason }, names) =>
    said(
      `Held to be out of the rug${mark === undefined ? '' : ` at mark ${names.mark(mark)}`}: ${agent}`,
      reason,
    ),
  SpotAired: ({ smell }) => `Solvent aired, smell: ${smell}`,
  StainAnswered: ({ question, answer }) => `Unknown stain, ${question}: ${answer}`,
  FlowBegun: ({ flow, where, why }) => said(`${flow.replaceAll('-', ' ')}: begun by hand`, where, why),
  FlowLogged: ({ flow, step, choice, conductivityUsPerCm, ph, note, photos }) =>
    said(
      `${flow.replaceAll('-', ' ')}: ${step.replaceAll('-', ' ')}`,
      choice?.replaceAll('-', ' '),
      conductivityUsPerCm === undefined ? undefined : `${figure(conductivityUsPerCm, 0)} µS/cm`,
      acid(ph),
      note,
      pictures(photos),
    ),
  StopCalled: ({ condition, note }) => said(`Stop: ${condition}`, note),
  StopCleared: ({ how }) => `Stop cleared: ${how}`,
  DryingStarted: ({ posture, place, heated }) =>
    said(`Drying began: ${posture}, ${place}`, heatWords(heated)),
  RugTurned: ({ posture }) => `Turned: ${posture}`,
  DryingReading: ({ massKg, pocketRh, meter, touch, smell, whiteCloth }) =>
    said(
      'Drying reading',
      kilograms(massKg),
      pocketRh === undefined ? undefined : `pocket ${humidityWords(pocketRh)}`,
      meter === undefined ? undefined : `meter ${meter.map(({ reading }) => figure(reading)).join(', ')}`,
      touch,
      smell === undefined ? undefined : `smell ${smell}`,
      whiteCloth === undefined ? undefined : `white cloth ${whiteCloth}`,
    ),
  DryAccepted: ({ standard, note }) => said(`Accepted as dry, standard: ${standard}`, note),
  FinishingDone: ({ works, note }) => said(`Finishing: ${works.join(', ')}`, note),
  RugInspected: ({ marks, odour, colour, note }) =>
    said(`Inspected: ${marks.length} marks, odour ${odour}, colour ${colour}`, note),
  ColoursCompared: ({ colours, sentence, alignedBy }) =>
    said(`Colours compared before and after, ${colours.length} places, aligned by ${alignedBy}`, sentence),
  DepositTaken: ({ amount, means }) => `Deposit taken: ${moneyWords(amount)}, ${means}`,
  InvoiceIssued: ({ number, lines }) => `Invoice ${number} issued, ${lines.length} lines`,
  PaymentTaken: ({ amount, means }) => `Payment taken: ${moneyWords(amount)}, ${means}`,
  RugReturned: ({ identity, difference }) => said('Handed back', `mass ${identity.mass}`, difference),
  VisitDeclined: ({ reason, wishOf }) => `Visit ended without the work, by the ${wishOf}: ${reason}`,
  RugMoved: ({ place }) => `Moved to ${place}`,
  SentOut: ({ to, purpose, backBy }) =>
    said(`Sent out to ${to}: ${purpose}`, backBy === undefined ? undefined : `back by ${dayWords(backBy)}`),
  CameBack: ({ condition }) => `Came back: ${condition}`,
  Quarantined: ({ why, note }) => said(`Quarantine: ${why}`, note),
  QuarantineReleased: ({ treatment, inspected }) => said(`Released from quarantine: ${treatment}`, inspected),
  IncidentReported: ({ what, action, clientTold }) =>
    said(`Incident: ${what}`, action, clientTold ? 'client told' : 'client not told'),
  ReceiptSigned: () => 'Receipt signed by the client',
  IncidentTold: ({ how }) => `Client told of the incident: ${how}`,
  StorageDue: ({ from, charge }) =>
    said(`Storage due from ${dayWords(from)}`, charge === undefined ? undefined : moneyWords(charge)),
  Unclaimed: ({ since, note }) => said(`Unclaimed since ${dayWords(since)}`, note),
  NoteAdded: ({ note }) => `Note: ${note}`,
  EntryWithdrawn: ({ reason }) => `Withdrawal of an earlier entry: ${reason}`,
};

/**
 * What an entry says in the history, in one or two lines.
 *
 * @source none: wording of this project
 */
export const factWords = (fact: RugFact, names: FactNames): string =>
  (tellers[fact.type] as ((fact: RugFact, names: FactNames) => string) | undefined)?.(fact, names) ??
  `An entry of a kind this version does not know: ${fact.type}`;
