import type { RugProblem } from '../dossier/index.ts';
import type { WordsFor } from './words.ts';

const listed = (items: readonly string[]) =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;

type FloorProblem = Extract<
  RugProblem,
  {
    readonly code:
      | 'dwell-not-over'
      | 'residue-forbidden'
      | 'residue-not-carried'
      | 'stain-unknown'
      | 'stain-answer-unknown'
      | 'agent-not-planned'
      | 'flow-step-not-next'
      | 'flow-unknown'
      | 'flow-there-already'
      | 'flow-before-wet-step'
      | 'stop-stands-on-reading';
  }
>;

/** Problems of the wash floor. */
export const floorWords = {
  'dwell-not-over': ({ minutesLeft }) => ({
    happened: `The dwell has ${minutesLeft} min left.`,
    matters: 'Cut short it does half its work, and the next liquid meets what is left of it.',
    now: 'Wait for the timer, or say why it ends now.',
  }),
  'residue-forbidden': ({ what, rule, residues, hazard, clear }) => ({
    happened: `“${what}” would meet what is still in the rug: ${listed(residues)}${rule === 'mixture' ? '' : ` (${rule})`}.`,
    matters: `Hazard: ${hazard}. Nobody may override this.`,
    now: `${clear.join(' ')} If it was laid on already, call the stop “A wrong agent was used.”`,
  }),
  'stain-unknown': ({ mark }) => ({
    happened: `No stain is recorded as “${mark}”.`,
    matters: 'What was done must stand with the place it was done at.',
    now: 'Draw the stain as a mark first, or load the page again.',
  }),
  'residue-not-carried': ({ agent }) => ({
    happened: `${agent} is not in this rug from before this visit, at that place.`,
    matters: 'What was laid in this visit is only held to be out when the rinse, or the air, says so.',
    now: 'Rinse and read the water twice at the supply, or air a solvent and log it.',
  }),
  'stain-answer-unknown': ({ question, answer }) => ({
    happened: `The question “${question}” has no answer “${answer}”.`,
    matters: 'An answer nobody can read narrows nothing.',
    now: 'Choose one of the answers on the card.',
  }),
  'agent-not-planned': ({ agents, planned }) => ({
    happened: `The step is for ${listed(planned)}, not for ${listed(agents)}.`,
    matters: 'Only what was tested on these colours and agreed is laid on them.',
    now: 'Use the planned agent. If another was laid on already, call the stop “A wrong agent was used.”',
  }),
  'flow-step-not-next': ({ flow, step, next }) => ({
    happened: `“${step}” is not the next step of “${flow}”${next === null ? ', which is through' : `; “${next}” is`}.`,
    matters: 'Each step stands on the one before it.',
    now: next === null ? 'Load the page again.' : 'Log the step at hand first.',
  }),
  'flow-unknown': ({ flow, known }) => ({
    happened: `No flow is called “${flow}”; known: ${listed(known)}.`,
    matters: 'Only a known flow has an order, cautions and an end.',
    now: 'Choose one of the flows on the wash page.',
  }),
  'flow-there-already': ({ flow }) => ({
    happened: `“${flow}” is on this rug’s wash page already.`,
    matters: 'Two logs of one piece of work would each hold half of it.',
    now: 'Go on with the one that is there, or choose another place.',
  }),
  'flow-before-wet-step': ({ flow, step }) => ({
    happened: `“${step}” of “${flow}” wets the rug, and no wet step of the plan has been started.`,
    matters: 'The wet clock, the consent and the tests all hang on the plan’s own steps.',
    now: 'Start the plan’s wet step in the list, then log this.',
  }),
  'stop-stands-on-reading': ({ condition }) => ({
    happened: `This stop was raised by a reading that stands: ${condition}`,
    matters: 'The harm a reading shows is not undone by taking the stop away.',
    now: 'Follow the rescue card and clear the stop; if the reading was wrong, withdraw the reading first.',
  }),
} satisfies WordsFor<FloorProblem>;
