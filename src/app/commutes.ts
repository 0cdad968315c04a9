import type { RugEntry, RugFact, RugFactType } from '../dossier/facts/index.ts';

/** Judgements over the whole dossier: they hold only for the dossier that was before the person's eyes. */
const judgements: readonly RugFactType[] = [
  'PlanAgreed',
  'PriceQuoted',
  'ConsentGiven',
  'OverrideGranted',
  'SignedOff',
  'DryAccepted',
  'RugInspected',
  'RugReturned',
  'VisitDeclined',
  'QuarantineReleased',
];

/** Facts that bear on no judgement. */
const quiet: readonly RugFactType[] = [
  'NoteAdded',
  'PhotographTaken',
  'RugMoved',
  'DepositTaken',
  'InvoiceIssued',
  'PaymentTaken',
  'StorageDue',
];

/** What a fact replaces when it is recorded twice: two tablets saying different things of it need a person. */
const replaces = (fact: RugFact): readonly string[] => {
  switch (fact.type) {
    case 'MarkRecorded':
      return [`mark/${fact.mark}`];
    case 'FindingNoted':
      return [`finding/${fact.finding}`];
    case 'CornersTapped':
      return [`corners/${fact.photo}`];
    case 'ColoursNamed':
      return fact.colours.map(({ colour }) => `colour/${colour}`);
    case 'BathPlanned':
    case 'BathDropped':
      return [`bath/${fact.bath}`];
    case 'DryingExpected':
      return ['drying expected'];
    default:
      return [];
  }
};

/** Whether a fact says the same after what others recorded meanwhile as it said before. */
export function commutes(fact: RugFact, since: readonly RugEntry[]): boolean {
  if (judgements.includes(fact.type)) return since.every((entry) => quiet.includes(entry.fact.type));
  const mine = new Set(replaces(fact));
  return !since.some((entry) => replaces(entry.fact).some((subject) => mine.has(subject)));
}
