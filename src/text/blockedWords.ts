import type { RugProblem } from '../dossier/index.ts';
import { axisWords } from '../papers/limitWords.ts';
import type { WordsFor } from './words.ts';

const money = (minor: number, currency: string) => `${(minor / 100).toFixed(2)} ${currency}`;
const instant = (at: string) => `${at.slice(0, 10)} ${at.slice(11, 16)} UTC`;
const listed = (items: readonly string[]) =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;

/** What blocks a wet step, in a few words; used where several stand in one sentence. */
export const blockerWords = {
  'rug-quarantined': 'the rug is in quarantine',
  'rug-is-out': 'the rug is out of the house',
  'no-plan-possible': 'no wash plan is possible yet',
  'method-not-wet': 'the plan allows no wet method',
  'plan-not-agreed': 'no plan is on record',
  'plan-tightened': 'the plan has become tighter than the one agreed',
  'sign-off-missing': 'a sign-off is missing',
  'consent-missing': 'the client has not consented',
  'consent-refused': 'the client refused',
  'consent-withdrawn': 'the client took the consent back',
  'consent-for-another-plan': 'the consent is for another plan',
  'price-above-consent': 'the price is above what was agreed',
  'drying-forecast-stale': 'the drying forecast is too old',
  'stop-not-cleared': 'a stop is not cleared',
  'wet-minutes-used': 'its wet minutes are used up',
} as const;

/** Problems that hold a rug's wet steps, one by one and together. */
export const blockedWords = {
  'rug-quarantined': ({ why }) => ({
    happened: `The rug is in quarantine: ${why}.`,
    matters: 'What lives or lies in it would spread to other people’s rugs and to whoever handles it.',
    now: 'Treat and inspect it, then the owner releases it. Nothing overrides this.',
  }),
  'rug-is-out': ({ to }) => ({
    happened: `The rug is out of the house, at ${to}.`,
    matters: 'The record must show where the rug truly is.',
    now: 'Record that it came back, then go on.',
  }),
  'no-plan-possible': ({ refusal }) => ({
    happened: 'What is known of this rug allows no wash plan.',
    matters: 'Without a plan nobody can say which wash it bears.',
    now: `Open the plan: it names what clashes (${refusal.code}) and what to find out.`,
  }),
  'method-not-wet': ({ method, because }) => ({
    happened: `The plan allows “${method}”, no wet step.`,
    matters: because.length > 0 ? because.join(' ') : 'A wet step now could harm the rug for good.',
    now: 'Look at “What would loosen this” in the plan: a test or an observation may allow more.',
  }),
  'plan-not-agreed': () => ({
    happened: 'No wash plan is on record for this visit.',
    matters: 'The client agrees to a plan, and every bath is judged by it.',
    now: 'Open the plan and put it on record.',
  }),
  'plan-tightened': ({ axes }) => ({
    happened: `What was found since makes the plan tighter than the one agreed (${axes.map((axis) => axisWords[axis]).join('; ')}).`,
    matters: 'The agreement was for more than the rug can now be said to bear, so it no longer holds.',
    now: 'Put the new plan on record and ask the client again.',
  }),
  'sign-off-missing': ({ who }) => ({
    happened: `A sign-off is missing: ${listed(who)}.`,
    matters: 'This rug’s value or route asks for a second judgement before water.',
    now: 'Record the sign-off with the name of who gives it.',
  }),
  'consent-missing': () => ({
    happened: 'The client has not consented to this plan.',
    matters: 'Somebody else’s rug is not wetted without their word.',
    now: 'Show the consent paper and record how they agreed. Nothing overrides this.',
  }),
  'consent-refused': ({ words }) => ({
    happened: `The client refused: “${words}”.`,
    matters: 'Their no stands until they say otherwise.',
    now: 'Offer another scope, or return the rug.',
  }),
  'consent-withdrawn': ({ words }) => ({
    happened: `The client took the consent back: “${words}”.`,
    matters: 'Work without consent cannot be undone.',
    now: 'Settle it with the client and record a new consent, or return the rug.',
  }),
  'consent-for-another-plan': () => ({
    happened: 'The consent on record is for an earlier plan.',
    matters: 'The client agreed to other risks than those of the plan that stands now.',
    now: 'Show the present plan and record the consent to it.',
  }),
  'price-above-consent': ({ agreedMinor, quotedMinor, currency }) => ({
    happened: `The price may reach ${money(quotedMinor, currency)}; the client agreed to at most ${money(agreedMinor, currency)}.`,
    matters: 'A raised price voids the consent.',
    now: 'Lower the quote, or ask the client to agree to the new ceiling.',
  }),
  'drying-forecast-stale': ({ madeAt, mostHours }) => ({
    happened: `The drying forecast was made on ${instant(madeAt)}; it holds for ${mostHours} h.`,
    matters:
      'Other rugs may hang in the room by now: whether this one is dry in time has to be asked again before the water.',
    now: 'Forecast it again; the plan stays as agreed unless the new forecast tightens it.',
  }),
  'stop-not-cleared': ({ condition }) => ({
    happened: `A stop is open: ${condition.replace(/\.$/, '')}.`,
    matters: 'Going on before it is resolved can make the harm permanent.',
    now: 'Follow the rescue card, then record how it was resolved.',
  }),
  'wash-not-allowed': ({ blockers }) => ({
    happened: `Not yet: ${listed(blockers.map(({ code }) => blockerWords[code]))}.`,
    matters: 'A wash cannot be undone.',
    now: 'Clear each of these; the dossier shows the next one.',
  }),
  'wet-minutes-used': ({ used, allowed }) => ({
    happened: `The rug has been wet for ${used} min; it bears ${allowed}.`,
    matters: 'Every further minute moves dye, swells the foundation and brings browning nearer.',
    now: 'Rinse and extract now; these are never held back.',
  }),
} satisfies WordsFor<Extract<RugProblem, { code: keyof typeof blockerWords | 'wash-not-allowed' }>>;
