import type { MixProblem } from '../core/wash/index.ts';
import type { ShelfAsk, ShelfGapProblem, ShelfProblem } from '../dossier/index.ts';
import type { chemistryWords } from './chemistryWords.ts';
import type { WordsFor } from './words.ts';

type Own = Exclude<
  MixProblem | ShelfProblem | ShelfGapProblem,
  { readonly code: keyof typeof chemistryWords | 'role-missing' }
>;

const listed = (items: readonly string[]) => (items.length === 0 ? 'none' : items.join(', '));
const amount = (value: number, unit: string) =>
  `${value >= 100 ? value.toFixed(0) : value.toPrecision(2)} ${unit}`;

/** Problems of the shelf and of mixing from it. */
export const shelfWords = {
  'strength-above-whole': ({ name, percent }) => ({
    happened: `The parts of ${name} add up to ${percent.toFixed(1)} % of its mass; at most 100 % is possible.`,
    matters: 'Every dose would be too small by as much.',
    now: 'Read the strengths on the safety data sheet again: % w/w, or g/L with the density.',
  }),
  'density-missing': ({ name }) => ({
    happened: `No density is given for ${name}.`,
    matters: 'Millilitres and g/L cannot be turned into grams without it.',
    now: 'Give the density in g/mL from its safety data sheet, or measure it out in grams.',
  }),
  'stock-short': ({ name, have, need, unit }) => ({
    happened: `${amount(have, unit)} of ${name} is left in date; this bath takes at least ${amount(need, unit)}.`,
    matters: 'A bath begun and not finished leaves chemistry in the pile.',
    now: 'Fetch more, or count the stock again if it is wrong.',
  }),
  'strength-missing': ({ name, agent, kind }) => ({
    happened: `${name} serves as ${agent}, but no ${kind} with a strength is stated of it.`,
    matters:
      'Without its strength nobody can say how much of it makes a weak liquid, and how much a harmful one.',
    now: 'Write its strength on the page Shelf, from its safety data sheet.',
  }),
  'product-too-weak': ({ name, agent, percent, needed }) => ({
    happened: `${name} holds ${percent.toPrecision(2)} % ${agent}; this liquid needs at least ${needed.toPrecision(2)} %.`,
    matters: 'Even undiluted it would stay below what is asked for.',
    now: 'Use a product that is stronger, or correct its strength on the page Shelf.',
  }),
  'stock-may-end': ({ name, have, need, unit }) => ({
    happened: `${amount(have, unit)} of ${name} is left in date after the steps before; this one may take ${amount(need, unit)}.`,
    matters: 'A wash begun without enough of it stops half way, with the rug wet.',
    now: 'Receive a new lot, or count the stock again if it is wrong.',
  }),
  'agent-ran-out': ({ name, agent }) => ({
    happened: `Nothing of ${name} is left in date. A plan still uses it as ${agent}.`,
    matters: 'A wash begun without it stops half way, with the rug wet.',
    now: 'Receive a new lot, or put another product for this on the shelf.',
  }),
  'spotter-off-band': ({ name, least, most, bandLeast, bandMost }) => ({
    happened: `Made up so, ${name} stands at pH ${least.toFixed(1)} to ${most.toFixed(1)} by computation; this place bears ${bandLeast === bandMost ? bandLeast.toFixed(1) : `${bandLeast.toFixed(1)} to ${bandMost.toFixed(1)}`}.`,
    matters: 'Too acid it gives off gas; outside its band it moves dyes that held.',
    now:
      least < bandLeast
        ? 'Measure the cup. Lift it into the band with a little sodium bicarbonate before it touches the rug; never add acid to it. If it does not get there, leave this spotter.'
        : 'Measure the cup. Never add acid to it: make it up with softer water, or leave this spotter.',
  }),
  'shelf-agent-unknown': ({ agent }) => ({
    happened: `No product ${agent} was ever put on the shelf.`,
    matters: 'Stock of something undescribed protects nobody.',
    now: 'Put the product on the shelf first, with its composition and hazards.',
  }),
  'lot-unknown': ({ name, lot, known }) => ({
    happened: `${name} has no lot “${lot}” here; known: ${listed(known)}.`,
    matters: 'If a rug is harmed, the lot is what tells which others are at risk.',
    now: 'Read the lot on the container, or record that it was received.',
  }),
  'shelf-day-ahead': ({ what, on, today }) => ({
    happened: `The ${what === 'water' ? 'water was read' : 'lot was received'} on ${on}, which is after today, ${today}.`,
    matters: 'What is dated to a day to come would count as fresh for too long.',
    now: `Give the day on which it was ${what === 'water' ? 'read' : 'received'}: ${today} or earlier.`,
  }),
  'lot-expired-before-receipt': ({ name, lot, expires, received }) => ({
    happened: `Lot ${lot} of ${name} is to be used until ${expires}, which is before it was received, ${received}.`,
    matters: 'One of the two days is wrong, or the supplier sent what had already expired.',
    now: `Read the container again: a last day of ${received} or later. If it truly has expired, send it back.`,
  }),
  'lot-expiry-differs': ({ name, lot, known, given }) => ({
    happened: `Lot ${lot} of ${name} is on record with last day ${known}; now ${given} is given.`,
    matters:
      'All containers of a lot bear the same day; taking over the later one would hide that some expired.',
    now: 'Read both containers. Correct the lot on record, or give this one its own lot.',
  }),
  'hardness-unit-wrong': ({ unit, known }) => ({
    happened: `The hardness is given in ${unit}, which tells of alkalinity.`,
    matters: 'Acid capacity says nothing of calcium and magnesium; the detergent would be dosed wrongly.',
    now: `Give the hardness in one of: ${known.join(', ')}.`,
  }),
  'water-not-believed': ({ field, value, unit, most }) => ({
    happened: `The ${field} is ${value} ${unit}; at most ${most.toPrecision(3)} ${unit} is believed.`,
    matters:
      'No tap gives such water: the figure was likely read in another unit, and every dose would follow it.',
    now: 'Look which unit the sheet states, and choose it beside the figure.',
  }),
  'agent-hidden': ({ name, chemical, as, serves }) => ({
    happened: `${name} holds ${chemical} and would be used as ${serves}.`,
    matters: 'Plans keep forbidden mixtures apart by what a product serves as: this one would pass unseen.',
    now: `Let it serve only as ${as}, or as nothing in the plans.`,
  }),
  'detergent-not-neutral': ({ name, ph, least, most }) => ({
    happened: `${name} is to serve as neutral detergent, and its own dilution has pH ${ph}; allowed are pH ${least} to ${most}.`,
    matters: 'Wool and most dyes bear only a neutral bath; the plan would call it neutral.',
    now: 'Let it serve as alkaline detergent, or read the pH on its data sheet again.',
  }),
  'constituent-kind-wrong': ({ name, chemical, kind, is }) => ({
    happened: `In ${name}, ${chemical} stands as ${kind}; it is: ${is}.`,
    matters: 'The kind tells what a constituent may not meet.',
    now: `Choose the kind ${is}, or another chemical.`,
  }),
  'strength-unknown': ({ name, chemicals }) => ({
    happened: `Nobody wrote down how much ${listed(chemicals)} is in ${name}: it is taken as strong as it can be.`,
    matters:
      'The amount is the least that may be needed; more at once could leave the rug too acid or too alkaline.',
    now: 'Add it in parts and measure after each. Ask the supplier for the strength in % w/w, or g/L with the density.',
  }),
  'composition-unknown': ({ name, agent }) => ({
    happened: `No chemical is named in ${name}, so the pH it brings as ${agent} cannot be computed.`,
    matters: 'A dose by guess is how colours are lost.',
    now: 'Ask the supplier for the chemical, its hydrate and its strength, and describe the product anew.',
  }),
  'agent-not-on-shelf': ({ agent }) => ({
    happened: `Nothing on the shelf serves as ${agent}.`,
    matters: 'Amounts then hold for the pure chemical only, and no lot can be logged.',
    now: 'Put a product for it on the shelf, or say of one there that it serves.',
  }),
  'agent-off-shelf': ({ name, agent, why }) => ({
    happened: `${name} was taken off the shelf${why === '' ? '' : `: ${why.replace(/\.$/, '')}`}. A plan still uses it as ${agent}.`,
    matters: 'What was taken off may be spoilt or unsafe.',
    now: 'Do not use it. Shelve another product for this, or plan without it.',
  }),
  'lot-expired': ({ name, lot, expires }) => ({
    happened: `Lot ${lot} of ${name} expired on ${expires}.`,
    matters: 'An old agent may be weaker or stronger than its label, so no computed amount holds.',
    now: 'Use a lot in date; dispose of this one as its safety data sheet says.',
  }),
} satisfies WordsFor<Own>;

/** What is asked of the supplier, and what is reckoned with until the answer is written down. */
export const shelfAskWords: {
  readonly [A in ShelfAsk]: { readonly ask: string; readonly until: string };
} = {
  strength: {
    ask: 'The strength of each constituent, in % w/w or in g/L with the density',
    until: 'it counts as the strongest it can be, so doses are the least and grow by the meter',
  },
  chemical: {
    ask: 'The chemical in it and its hydrate',
    until: 'no dose to a pH is computed with it',
  },
  ph: {
    ask: 'The pH of a stated dilution',
    until: 'measure the bath before it touches a rug',
  },
  hazards: {
    ask: 'Its signal word and hazard statements',
    until: 'treat it as dangerous: gloves, goggles, air, eyewash',
  },
  'safety sheet': {
    ask: 'The safety data sheet',
    until: 'do not open it without gloves and goggles',
  },
  expiry: {
    ask: 'Until when a lot may be used',
    until: 'nobody can tell whether it has lost its strength',
  },
};
