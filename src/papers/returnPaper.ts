import { wetSince } from '../dossier/index.ts';
import { leftInItParts } from './leftInItParts.ts';
import { humidityWords, massWords, momentWords, moneyWords, shortMoment } from './measureWords.ts';
import type { PaperPart } from './paper.ts';
import type { PaperContext } from './paperContext.ts';
import type { PaperBody } from './paperKinds.ts';
import { facts, figures, heading, notice, row, table, text, words } from './parts.ts';
import { photographsOf, setPhotographs } from './photographs.ts';
import { signed } from './signing.ts';
import { clientName, dataErased, personWords } from './visitWords.ts';

const statement =
  'I have received the rug named above. What I see differs from its papers only as noted here.';

const moneyParts = (context: PaperContext): readonly PaperPart[] => {
  const { visit, timeZone } = context;
  const lines = [
    ...visit.invoices.map(({ number, lines: of, when }) => {
      const currency = of[0]?.amount.currency ?? '';
      const one = of.every(({ amount }) => amount.currency === currency);
      const total = { amountMinor: of.reduce((sum, { amount }) => sum + amount.amountMinor, 0), currency };
      return [
        shortMoment(when, timeZone),
        `Invoice ${number}`,
        one ? moneyWords(total) : 'several currencies',
      ];
    }),
    ...visit.deposits.map(({ amount, means, when }) => [
      shortMoment(when, timeZone),
      `Deposit, ${means}`,
      moneyWords(amount),
    ]),
    ...visit.payments.map(({ amount, means, when }) => [
      shortMoment(when, timeZone),
      `Payment, ${means}`,
      moneyWords(amount),
    ]),
  ];
  return [
    table(
      [words('When', 1.6), words('What', 2), figures('Amount', 1)],
      lines,
      'No invoice or payment is on record for this visit.',
    ),
  ];
};

const identityParts = (context: PaperContext): readonly PaperPart[] => {
  const { end } = context.visit;
  if (end === null) return [text('Tag, size, mass and picture are compared at the hand-back.', 'soft')];
  const { identity, difference } = end.returned;
  const said = (agrees: boolean) => (agrees ? 'agrees' : 'NOT compared or differs');
  const mass =
    end.returned.massKg === undefined ? '' : massWords(end.returned.massKg, context.workshop.settings.units);
  return [
    facts(
      row('Tag', said(identity.tag)),
      row('Size', said(identity.size)),
      row(
        'Mass',
        identity.mass,
        [mass, end.returned.airRh === undefined ? '' : `in air of ${humidityWords(end.returned.airRh)}`]
          .filter((one) => one !== '')
          .join(', '),
      ),
      row('Picture', said(identity.picture)),
    ),
    ...(difference === undefined
      ? []
      : [notice('caution', 'It goes home although something does not agree', [difference])]),
  ];
};

/**
 * The way home: what was done, that it is the same rug, that it is dry, the money, and the signature; or why
 * the visit ended without the work.
 *
 * @source none: contents by this project's rules for papers
 */
export function returnPaper(context: PaperContext): PaperBody {
  const { visit, timeZone } = context;
  const { end, declined, dryAccepted, inspected } = visit;
  const erased = context.client?.kind === 'erased';
  const wet = wetSince(visit);
  return {
    subtitle:
      end === null
        ? 'To be signed at the hand-back.'
        : end.how === 'returned'
          ? 'Handed back.'
          : 'Handed back without the work.',
    parts: [
      ...(declined === null
        ? []
        : [
            notice('note', `Declined by the ${declined.wishOf}`, [
              declined.reason,
              momentWords(declined.when, timeZone),
            ]),
          ]),
      ...(end?.returned.inQuarantine === undefined
        ? []
        : [notice('stop', 'It went home from quarantine', [end.returned.inQuarantine])]),
      ...(wet !== null && dryAccepted === null
        ? [
            notice('stop', 'Not accepted as dry', [
              'A rug that was wetted goes home only when it meets the dry standard.',
            ]),
          ]
        : []),
      ...(end === null && declined === null && inspected === null
        ? [notice('stop', 'Final inspection not done')]
        : []),
      ...leftInItParts(context),
      facts(
        row('Client', clientName(context)),
        row('Came in for', visit.received.scope.join(', '), visit.received.reason),
        row('Received', momentWords(visit.received.when, timeZone)),
        row(
          'Accepted as dry',
          wet === null
            ? 'not wetted in this visit'
            : dryAccepted === null
              ? 'not yet'
              : `${momentWords(dryAccepted.when, timeZone)}, standard: ${dryAccepted.standard}`,
        ),
        row(
          'Inspected',
          inspected === null
            ? 'not yet'
            : `${momentWords(inspected.when, timeZone)}, ${personWords(context, inspected.by)}`,
        ),
        end !== null
          ? row(
              'Handed to',
              erased ? dataErased : end.returned.to,
              `${momentWords(end.returned.when, timeZone)}, by ${personWords(context, end.returned.by)}`,
            )
          : null,
      ),
      heading(1, 'Is it the same rug?'),
      ...identityParts(context),
      heading(1, 'Rules set aside in this visit'),
      table(
        [words('Rule', 0.6), words('Reason', 3), words('Owner, when', 1.4)],
        visit.overrides.map(({ rule, reason, by, when }) => [
          rule,
          reason,
          `${personWords(context, by)}\n${shortMoment(when, timeZone)}`,
        ]),
        'None.',
      ),
      heading(1, 'Money'),
      ...moneyParts(context),
      heading(1, 'Photographs at the hand-back'),
      ...setPhotographs(
        photographsOf(context, 'return'),
        context,
        'No photograph was taken at the hand-back.',
      ),
      heading(1, 'Signature'),
      signed(context, end?.returned.signature, statement),
    ],
  };
}
