import type { PlanProblem, RuleProblem } from '../core/wash/index.ts';
import type { WordsFor } from './words.ts';

const listed = (items: readonly string[]) =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;

/** Problems of the wash plan. */
export const washWords = {
  'wash-limits-clash': ({ axis, first, second }) => ({
    happened: `Two limits leave no ${axis === 'bathPh' ? 'bath' : 'last rinse'} between them: ${first.about} asks for ${first.limit} (${first.rule}), ${second.about} for ${second.limit} (${second.rule}).`,
    matters: `${first.because} ${second.because}`,
    now: 'Test again nearer to the other limit, choose a dry method, or refer the rug.',
  }),
  'wash-blocked': ({ rule, about, because, now }) => ({
    happened: `Nothing may be done yet: ${about} (${rule}).`,
    matters: because,
    now,
  }),
  'wash-promise-too-early': ({ promiseHours, earliestHours }) => ({
    happened: `The rug is promised in ${promiseHours} h; dry and checked it can be in ${earliestHours} h at the earliest (R39).`,
    matters: 'A rug that leaves damp grows mould where nobody watches it.',
    now: 'Agree a later day with the client, or shorten the drying.',
  }),
  'wash-mixture-forbidden': ({ rule, bath, agents, hazard }) => ({
    happened: `“${bath}” may not be mixed: ${listed(agents)}${rule === 'mixture' ? '' : ` (${rule})`}.`,
    matters: `Hazard: ${hazard}. Nobody may override this.`,
    now: 'Take one of the agents out and rinse fully between them.',
  }),
  'wash-agent-forbidden': ({ bath, agent, rule, about, because }) => ({
    happened: `“${bath}” holds ${agent}, which ${about} forbids (${rule}).`,
    matters: because,
    now: 'Choose another agent.',
  }),
  'wash-bath-ph-outside': ({ bath, pH, least, most, rule, about, because }) => ({
    happened:
      pH === null
        ? `The pH of “${bath}” is not known, and ${about} bears pH ${least} to ${most} only (${rule}).`
        : `“${bath}” has pH ${pH}; ${about} bears pH ${least} to ${most} only (${rule}).`,
    matters: because,
    now:
      pH === null
        ? 'Mix a litre of it, measure its pH and write it down; a bath outside the band is not used.'
        : 'Choose a milder bath.',
  }),
  'wash-override-not-possible': ({ rule }) => ({
    happened: `Rule ${rule} cannot be overridden.`,
    matters: 'It guards against a forbidden mixture, missing consent, or what spreads to other rugs.',
    now: 'Change what the rule stands on.',
  }),
  'wash-facts-invalid': ({ faults }) => ({
    happened: faults
      .map(({ field, value, allowed }) => `${field} is ${value}; allowed: ${allowed}.`)
      .join(' '),
    matters: 'A plan from wrong facts could harm the rug.',
    now: 'Correct the facts and plan again.',
  }),
  'rule-value-unknown': ({ address }) => ({
    happened: `“${address}” is no place in the rulebook.`,
    matters: 'A change that stands nowhere would protect no rug.',
    now: 'Find the value on the page Rules and change it there.',
  }),
  'rule-value-wrong': ({ name, value, allowed }) => ({
    happened: `${name} cannot be ${value}; allowed: ${allowed}.`,
    matters: 'Every plan is judged by this value.',
    now: 'Write an allowed value.',
  }),
  'rule-looser-than-delivered': ({ title, name, value, delivered }) => ({
    happened: `“${title}”: ${name} ${value} would allow more than the delivered ${delivered}.`,
    matters:
      'Forbidden mixtures, rules that nobody may set aside and published safety times are only ever tightened.',
    now: 'Choose the delivered value or a stricter one.',
  }),
} satisfies WordsFor<PlanProblem | RuleProblem>;
