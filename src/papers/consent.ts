import { done, type Result, refused } from '../units/index.ts';
import { agreementParts, priceParts, riskParts, stepLines, untestedParts } from './agreementParts.ts';
import { dyeGrounds } from './dyeGrounds.ts';
import { limitRows } from './limitWords.ts';
import { dayWords, figure } from './measureWords.ts';
import { ownRuleParts } from './ownRuleParts.ts';
import type { PaperContext } from './paperContext.ts';
import type { PaperBody } from './paperKinds.ts';
import type { PaperHasNoGround } from './paperProblem.ts';
import { facts, heading, list, notice, row, text } from './parts.ts';
import { blockerParts, planInForce, presentPlan } from './planInForce.ts';
import { clientName } from './visitWords.ts';

const statement =
  'I have read what will be done, the risks of my rug and the highest price, and I agree. I may take this back at any time; what is done by then cannot be undone.';

/**
 * What the client agrees to: the work, each risk of this rug with its finding, what is not tested, the
 * highest price, and how they agreed.
 *
 * @refuses paper-has-no-ground - there is no wash plan to agree to
 * @source none: contents by this project's rules for papers
 */
export function consent(context: PaperContext): Result<PaperBody, PaperHasNoGround> {
  const { visit } = context;
  const force = planInForce(context);
  if (force === null) {
    const present = presentPlan(context);
    const because = present.ok ? '' : present.words.happened;
    return refused('paper-has-no-ground', { paper: 'consent', missing: 'wash plan', because });
  }
  const { plan, fingerprint } = force;
  const { promisedFor } = visit.received;
  const hours = plan.basis.expectedDryingHours;
  return done({
    subtitle: 'What will be done to your rug, what could go wrong, and what it will cost at most.',
    parts: [
      ...blockerParts(context, ['consent-missing', 'plan-not-agreed']),
      heading(1, 'The work'),
      facts(
        row('Client', clientName(context)),
        row('Came in for', visit.received.scope.join(', '), visit.received.reason),
        row('Method', plan.method, 'the wettest this rug may bear; the reasons stand below'),
        promisedFor === undefined ? null : row('Promised for', dayWords(promisedFor)),
        hours === undefined ? null : row('Hours until dry', figure(hours), plan.basis.expectedDryingFrom),
      ),
      list(stepLines(plan.steps), true),
      heading(1, 'The risks of this rug'),
      text(
        'Each of these was found on this rug. Ask about any you do not want to bear; the rug can also go home as it is.',
        'lead',
      ),
      ...riskParts(plan),
      ...dyeGrounds(plan, context),
      ...untestedParts(plan, visit, context),
      ...(plan.overridden.length === 0
        ? []
        : [
            notice(
              'caution',
              'The owner of the workshop answers for this',
              plan.overridden.map(({ rule, reason }) => `Rule ${rule} is set aside: ${reason}`),
            ),
          ]),
      heading(1, 'The limits we work within'),
      facts(...limitRows(plan, ['consents'])),
      heading(1, 'The price'),
      ...priceParts(visit.quote),
      heading(1, 'Agreement'),
      text(
        'This agreement ends by itself when something is found that tightens the plan or raises the price: work on the wash stops and you are asked again.',
      ),
      ...agreementParts(visit, statement, context),
      text(`Plan ${fingerprint}, rulebook ${plan.rulebook}.`, 'soft'),
      ...ownRuleParts(plan),
    ],
  });
}
