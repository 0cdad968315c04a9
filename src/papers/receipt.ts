import { carriedResidues, latestVisit, sizeOf } from '../dossier/index.ts';
import { areaWords, dayWords, lengthWords, massWords, momentWords, moneyWords } from './measureWords.ts';
import type { PaperPart } from './paper.ts';
import type { ConsignedRug, PaperContext } from './paperContext.ts';
import type { PaperBody } from './paperKinds.ts';
import { facts, heading, list, row, table, words } from './parts.ts';
import { signed } from './signing.ts';
import { clientName, dossierNumber, duringVisit, personWords, titleWords } from './visitWords.ts';

/** What the receipt itself binds; wording of this project, not legal advice. */
const terms = [
  'The rugs listed here stay the client’s property and are kept by the workshop for the purpose named.',
  'Their state at the door is the condition report’s; what is hidden under soil may only show later and is then told to the client before work goes on.',
  'No water touches a rug before its dyes are tested and the client has agreed in writing, or before a witness, to the plan, its risks and its price.',
  'A declared value is the client’s own statement. Nothing on this receipt is an appraisal.',
  'Local law and any contract between the parties come before this paper.',
];

const sizeWords = ({ rug }: ConsignedRug, context: PaperContext): string => {
  const size = sizeOf(rug, 'intake') ?? sizeOf(rug);
  if (size === null) return 'not measured yet';
  const { units } = context.workshop.settings;
  return `${lengthWords(size.lengthMm, units)} × ${lengthWords(size.widthMm, units)}, ${areaWords(size.areaM2, units)}`;
};

const rugParts = (consigned: ConsignedRug, context: PaperContext): readonly PaperPart[] => {
  const { rug, visit } = consigned;
  const { received } = visit;
  const during = duringVisit(consigned);
  const atTheDoor = rug.marks.filter((mark) => mark.foundDuringWork !== true).length;
  const known = latestVisit(rug) === visit ? carriedResidues(rug, context.workshop.settings) : [];
  const carried = [...new Set(known.map(({ agent }) => agent))];
  const weighed = rug.weighings.filter(during)[0];
  const photographs = rug.photographs.filter((photo) => during(photo) && photo.occasion === 'intake').length;
  return [
    heading(2, `${titleWords(rug)}, tag ${received.tag}`),
    facts(
      row('Dossier', dossierNumber(rug)),
      row('Came in for', received.scope.join(', '), received.reason),
      row('Route', received.route),
      row('Size', sizeWords(consigned, context)),
      row(
        'Mass',
        weighed === undefined
          ? 'not weighed yet'
          : massWords(weighed.massKg, context.workshop.settings.units),
      ),
      row(
        'Declared value',
        received.declaredValue === undefined ? 'none declared' : moneyWords(received.declaredValue),
      ),
      row('Marks recorded', atTheDoor === 0 ? 'none yet' : `${atTheDoor}, listed in the condition report`),
      row('Photographs taken', String(photographs)),
      carried.length === 0
        ? null
        : row('In it from before', carried.join(', '), 'no reading shows it out; counts as still there'),
      received.promisedFor === undefined ? null : row('Promised for', dayWords(received.promisedFor)),
    ),
  ];
};

/**
 * The receipt of a whole consignment: who handed over what, in what right, and signs for it.
 *
 * @source none: contents by this project's rules for papers
 */
export function receipt(context: PaperContext): PaperBody {
  const { client, consignment, visit, timeZone } = context;
  const { received } = visit;
  const known = client?.kind === 'known' ? client : null;
  const deposits = consignment.flatMap((one) => one.visit.deposits);
  const many = consignment.length > 1;
  return {
    subtitle: many
      ? `${consignment.length} rugs taken in together as consignment ${received.consignment}.`
      : `One rug taken in as consignment ${received.consignment}.`,
    parts: [
      heading(1, 'Who handed over'),
      facts(
        row('Client', clientName(context)),
        known === null ? null : row('Reached at', [known.phone, known.email].filter(Boolean).join(' · ')),
        known?.address === undefined ? null : row('Address', known.address),
        row('Hands over as', received.authority),
        row('Taken in by', personWords(context, received.by)),
        row('When', momentWords(received.when, timeZone)),
      ),
      heading(1, many ? 'What was received' : 'The rug'),
      ...(many
        ? [
            table(
              [
                words('Tag', 0.6),
                words('Dossier', 0.7),
                words('Rug', 2),
                words('Size', 2),
                words('Came in for', 1.4),
              ],
              consignment.map((one) => [
                one.visit.received.tag,
                dossierNumber(one.rug),
                titleWords(one.rug),
                sizeWords(one, context),
                one.visit.received.scope.join(', '),
              ]),
              '',
            ),
          ]
        : []),
      ...consignment.flatMap((one) => rugParts(one, context)),
      ...(deposits.length === 0
        ? []
        : [
            heading(1, 'Deposit'),
            facts(
              ...deposits.map((deposit) =>
                row(momentWords(deposit.when, timeZone), moneyWords(deposit.amount)),
              ),
            ),
          ]),
      heading(1, 'On these terms'),
      list(terms, true),
      signed(
        context,
        received.signature ??
          consignment.find((one) => one.visit.receiptSigned !== null)?.visit.receiptSigned?.signature,
        'I have handed over the rugs listed here, in the right named above, on these terms.',
      ),
    ],
  };
}
