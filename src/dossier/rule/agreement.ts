import { isOverridable, planWash } from '../../core/wash/index.ts';
import { overrideAbout } from '../overrideAbout.ts';
import { bathOf, planFactsOf, planOf } from '../planFacts.ts';
import { canonicalJson, hashOfText } from '../seal.ts';
import { latestVisit } from '../standing.ts';
import { needsRole, type Rules } from './rule.ts';

/** SHA-256 of a plan's canonical JSON: what a consent is bound to. */
export const planFingerprint = (plan: unknown): string => hashOfText(canonicalJson(plan));

export const agreementRules: Rules = {
  BathPlanned: (standing, bath, asked) => {
    const stranger = needsRole(asked, 'BathPlanned', 'owner', 'washer');
    if (stranger !== null) return stranger;
    const facts = planFactsOf(standing, asked.settings, asked.now);
    if (!facts.ok) return null;
    const plan = planWash({ ...facts.value, plannedBaths: [bathOf(bath)] });
    // What else keeps the rug dry is the plan's to say; a bath that harms it is not written down as meant.
    if (plan.ok) return null;
    const { problem } = plan;
    return problem.code === 'wash-mixture-forbidden' ||
      problem.code === 'wash-agent-forbidden' ||
      problem.code === 'wash-bath-ph-outside'
      ? problem
      : null;
  },
  BathDropped: (standing, { bath }) =>
    latestVisit(standing)?.plannedBaths.some((planned) => planned.bath === bath) === true
      ? null
      : { code: 'bath-not-planned', facts: { bath } },
  PlanAgreed: (standing, fact, asked) => {
    const stranger = needsRole(asked, 'PlanAgreed', 'owner', 'washer');
    if (stranger !== null) return stranger;
    const current = planOf(standing, asked.settings, asked.now);
    if (!current.ok) return { code: 'no-plan-possible', facts: { refusal: current.problem } };
    const fingerprint = planFingerprint(current.value);
    const same = fact.fingerprint === fingerprint && planFingerprint(fact.plan) === fingerprint;
    return same ? null : { code: 'plan-not-current', facts: {} };
  },
  PriceQuoted: (_standing, { lines, notToExceed }, { settings }) => {
    const currencies = [...lines.map(({ amount }) => amount.currency), notToExceed.currency];
    const stranger = currencies.find((currency) => currency !== settings.currency);
    if (stranger !== undefined) {
      return { code: 'currency-differs', facts: { given: stranger, expected: settings.currency } };
    }
    const sumMinor = lines.reduce((sum, { amount }) => sum + amount.amountMinor, 0);
    return notToExceed.amountMinor >= sumMinor
      ? null
      : {
          code: 'ceiling-below-sum',
          facts: { sumMinor, notToExceedMinor: notToExceed.amountMinor, currency: settings.currency },
        };
  },
  ConsentGiven: (standing, { plan, notToExceed }) => {
    const visit = latestVisit(standing);
    if (visit?.plan === null || visit === null) return { code: 'plan-not-agreed', facts: {} };
    if (plan !== visit.plan.fingerprint) return { code: 'consent-for-another-plan', facts: {} };
    if (visit.quote === null) return { code: 'nothing-quoted', facts: {} };
    const quoted = visit.quote.notToExceed;
    return notToExceed.amountMinor < quoted.amountMinor || notToExceed.currency !== quoted.currency
      ? {
          code: 'price-above-consent',
          facts: {
            agreedMinor: notToExceed.amountMinor,
            quotedMinor: quoted.amountMinor,
            currency: quoted.currency,
          },
        }
      : null;
  },
  OverrideGranted: (standing, { rule, about }, asked) => {
    const stranger = needsRole(asked, 'OverrideGranted', 'owner');
    if (stranger !== null || rule === 'dry standard') return stranger;
    if (!isOverridable(rule)) return { code: 'rule-not-overridable', facts: { rule } };
    const held = overrideAbout(planOf(standing, asked.settings, asked.now), rule);
    const same = held !== null && canonicalJson(held) === canonicalJson([...about].sort());
    return same ? null : { code: 'rule-does-not-hold', facts: { rule, about: held ?? [] } };
  },
  // A conservator seldom has an account here; the owner answers for whose name is written down.
  SignedOff: (_standing, _fact, asked) => needsRole(asked, 'SignedOff', 'owner'),
};
