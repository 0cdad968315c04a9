import type { PlanStep, WashPlan } from '../core/wash/index.ts';
import type { Noted, VisitStanding } from '../dossier/index.ts';
import { momentWords, moneyWords } from './measureWords.ts';
import type { PaperPart } from './paper.ts';
import type { PaperContext } from './paperContext.ts';
import { facts, figures, heading, list, notice, row, table, text, words } from './parts.ts';
import { signed } from './signing.ts';
import { clientName, personWords } from './visitWords.ts';

/** Every step in one line a client can follow. */
export const stepLines = (steps: readonly PlanStep[]): readonly string[] =>
  steps.map((step) => `${step.kind}: ${step.what}`);

export function priceParts(quote: Noted<'PriceQuoted'> | null): readonly PaperPart[] {
  if (quote === null)
    return [
      notice('caution', 'No price has been quoted', ['Work waits until the client knows the highest price.']),
    ];
  return [
    table(
      [words('For', 4), figures('Price', 1)],
      quote.lines.map(({ words: what, amount }) => [what, moneyWords(amount)]),
      '',
    ),
    facts(
      row('Not to exceed', moneyWords(quote.notToExceed), 'More than this needs the client’s word again.'),
    ),
    ...(quote.note === undefined ? [] : [text(quote.note)]),
  ];
}

/** Each risk of this rug in a sentence, with the finding behind it. */
export function riskParts(plan: WashPlan): readonly PaperPart[] {
  if (plan.consents.length === 0)
    return [
      text(
        'The record shows no particular risk of this rug beyond those of any wash. What is not known counts as the worst case in the limits above.',
      ),
    ];
  return [
    list(
      plan.consents.map(({ text: risk, rule, about }) => `${risk} (because of: ${about}; rule ${rule})`),
      true,
    ),
  ];
}

/** Tests the client refused, and tests that are still missing: either leaves a risk that is not known. */
export function untestedParts(
  plan: WashPlan,
  visit: VisitStanding,
  context: PaperContext,
): readonly PaperPart[] {
  const refused = visit.testRefusals.map(({ colour, words: said, signed: bySignature }) => {
    const name = context.rug.colours.find((known) => known.colour === colour)?.name ?? colour;
    return `${name}: refused by the client${bySignature ? ', signed' : ', not signed'}: ${said}`;
  });
  const missing = plan.missingDyeTests.map(
    ({ name, side, liquid }) => `${name}, ${side}, ${liquid}: not tested yet`,
  );
  if (refused.length + missing.length === 0) return [];
  return [
    heading(1, 'Not tested'),
    list([...refused, ...missing]),
    text('A colour that is not tested counts as unstable: no wet step touches it.', 'soft'),
  ];
}

const given = (
  consent: Noted<'ConsentGiven'>,
  statement: string,
  context: PaperContext,
): readonly PaperPart[] => {
  const { agreed } = consent;
  const when = momentWords(consent.when, context.timeZone);
  // A letter or a signed sheet shows the client as much as a name does.
  const hidden = context.client?.kind === 'known' ? null : clientName(context);
  const shown = facts(
    row(
      'Agreed by',
      clientName(context),
      `${agreed.how}; recorded by ${personWords(context, consent.by)}, ${when}`,
    ),
    row('Paper that was shown', consent.paper, 'SHA-256'),
    row('Plan agreed to', consent.plan, 'SHA-256'),
    row('Not to exceed', moneyWords(consent.notToExceed)),
  );
  switch (agreed.how) {
    case 'signature on screen':
      return [shown, signed(context, agreed.signature, statement)];
    case 'paper photographed':
      return [
        shown,
        hidden === null
          ? { kind: 'picture', photo: agreed.photo, caption: 'The signed paper as photographed' }
          : text(`The signed paper was photographed: ${hidden}.`, 'soft'),
      ];
    case 'letter or e-mail':
      return [
        shown,
        facts(row('In their words', hidden ?? agreed.words)),
        ...(agreed.photo === undefined || hidden !== null
          ? []
          : [{ kind: 'picture' as const, photo: agreed.photo, caption: 'The letter' }]),
      ];
    case 'spoken':
      return [
        shown,
        facts(
          row(
            'In their words',
            hidden ?? agreed.words,
            `spoken ${momentWords(agreed.spokenAt, context.timeZone)}`,
          ),
          row('Witness', agreed.witness),
        ),
      ];
  }
};

/** How the client stands to the plan, or a line to sign on. */
export function agreementParts(
  visit: VisitStanding,
  statement: string,
  context: PaperContext,
): readonly PaperPart[] {
  const { consent } = visit;
  switch (consent.kind) {
    case 'none':
      return [signed(context, undefined, statement)];
    case 'given':
      return given(consent.given, statement, context);
    case 'refused':
      return [
        notice('stop', `The client refused ${consent.refused.what}`, [
          consent.refused.words,
          `${consent.refused.signed ? 'Signed' : 'Not signed'}; recorded by ${personWords(context, consent.refused.by)}, ${momentWords(consent.refused.when, context.timeZone)}.`,
        ]),
      ];
    case 'withdrawn':
      return [
        notice('stop', 'The client took the agreement back', [
          consent.withdrawn.words,
          `Recorded by ${personWords(context, consent.withdrawn.by)}, ${momentWords(consent.withdrawn.when, context.timeZone)}. No wet step until a new one.`,
        ]),
        signed(context, undefined, statement),
      ];
  }
}
