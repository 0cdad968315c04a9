import type { RugProblem } from '../dossier/index.ts';
import { dryAskedWords } from './dryWords.ts';
import type { WordsFor } from './words.ts';

const listed = (items: readonly string[]) =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
const obstacleWords = {
  'not-inspected': 'the final inspection is not done',
  'not-dry': 'it was wetted and is not yet accepted as dry',
  quarantined: 'it is in quarantine',
  'is-out': 'it is out of the house',
  'stop-not-cleared': 'a stop is still open',
} as const;

/** Problems of the work on a rug, from its first step to its return. */
export const workWords = {
  'step-not-planned': ({ step }) => ({
    happened: `The step “${step}” is not in the plan on record.`,
    matters: 'Only what the client agreed to is done.',
    now: 'Look at the plan again; it may have been put on record anew.',
  }),
  'step-wets': ({ step }) => ({
    happened: `The step “${step}” was sent with the wrong word on whether it wets the rug.`,
    matters: 'The wet clock starts with the first wet step.',
    now: 'Load the page again and start the step from the plan.',
  }),
  'step-not-started': ({ step }) => ({
    happened: `The step “${step}” has not been started.`,
    matters: 'Its time in the rug would be unknown.',
    now: 'Start the step, or record when it started.',
  }),
  'step-under-way': ({ step }) => ({
    happened: `The step “${step}” is already under way.`,
    matters: 'Its time runs from the first start.',
    now: 'Finish it first.',
  }),
  'too-few-people': ({ needed }) => ({
    happened: `This step needs ${needed} people, each under their own name.`,
    matters: 'One pair of hands cannot hold a heavy or bleeding rug.',
    now: 'Let whoever helps say so by PIN or on their own tablet, then start.',
  }),
  'nothing-measured': () => ({
    happened: 'The reading holds no value.',
    matters: 'An empty reading looks like one that was fine.',
    now: 'Give at least one value.',
  }),
  'stop-unknown': ({ stop }) => ({
    happened: `There is no open stop “${stop}”.`,
    matters: 'A stop is cleared once.',
    now: 'Load the page again; somebody may have cleared it.',
  }),
  'drying-not-started': () => ({
    happened: 'Drying has not been started.',
    matters: 'Readings belong to a posture and a place.',
    now: 'Record where and how the rug was laid or hung.',
  }),
  'dry-standard-unmet': ({ unmet }) => ({
    happened: `Not dry by the standard yet: ${unmet.map(({ code }) => dryAskedWords[code].toLowerCase()).join('; ')}.`,
    matters: 'Wool holds up to a third of its mass in water without feeling wet; mould needs two days.',
    now: 'Take the readings that are missing, or let it dry on.',
  }),
  'dry-standard-not-chosen': ({ standard, workshops }) => ({
    happened: `The standard “${standard}” is not the workshop’s (“${workshops}”).`,
    matters: 'A weaker standard is a setting of the owner’s and is printed on the papers.',
    now: `Use “${workshops}” or the full standard.`,
  }),
  'posture-not-allowed': ({ posture, limit }) => ({
    happened: `“${posture}” is not allowed for this rug; the plan asks for “${limit}”.`,
    matters: 'Weak, bleeding or soft pieces are lost by their own wet weight.',
    now: `Dry it ${limit}.`,
  }),
  'marks-not-inspected': ({ marks }) => ({
    happened: `${marks.length} mark${marks.length === 1 ? '' : 's'} from intake ${marks.length === 1 ? 'was' : 'were'} not looked at.`,
    matters: 'The comparison with intake is what settles an argument later.',
    now: 'Say of every mark whether it is unchanged, improved or worse.',
  }),
  'not-ready-to-return': ({ obstacles }) => ({
    happened: `The rug cannot go home yet: ${listed(obstacles.map((obstacle) => obstacleWords[obstacle]))}.`,
    matters: 'After the hand-back none of it can be made good here.',
    now: 'Do what is named, then hand it back.',
  }),
  'identity-differs': ({ which }) => ({
    happened: `It does not agree with intake: ${listed(which)}.`,
    matters: 'It may be another rug.',
    now: 'Check tag, size and pictures; if it is the rug after all, say why it differs.',
  }),
  'work-declined': ({ type }) => ({
    happened: `“${type}” cannot be recorded: the work was declined.`,
    matters: 'Nothing more is done to a rug whose work was declined; it only waits to be handed back.',
    now: 'Hand the rug back, or withdraw the decline in the history if the work goes on after all.',
  }),
  'quarantined-goes-home': ({ why }) => ({
    happened: `The rug is in quarantine: ${why}.`,
    matters: 'Whoever takes it home, and everything else that is there, is at risk.',
    now: 'Record how it was packed and what the client was told of the risk.',
  }),
  'day-not-possible': ({ what, day, from, until }) => ({
    happened: `The day “${what}” cannot be ${day}.`,
    matters: 'What is asked of an outside workshop or a client by a day must be a day that can be.',
    now: until === null ? `Give a day from ${from} on.` : `Give a day from ${from} to ${until}.`,
  }),
  'incident-unknown': () => ({
    happened: 'There is no such incident in this visit, or the client already knows of it.',
    matters: 'What the client was told must belong to a report.',
    now: 'Open the dossier anew and choose the incident.',
  }),
  'wet-rug-stays': () => ({
    happened: 'The rug is wet.',
    matters: 'A wet rug that leaves grows mould where nobody watches it.',
    now: 'Dry it to the standard first; the owner may override the dry standard with a reason.',
  }),
  'not-quarantined': () => ({
    happened: 'The rug is not in quarantine.',
    matters: 'A release without a quarantine proves nothing.',
    now: 'Load the page again; somebody may have released it.',
  }),
  'not-out': () => ({
    happened: 'The rug is not recorded as out of the house.',
    matters: 'The record must show where it was.',
    now: 'Load the page again, or record that it moved.',
  }),
} satisfies Partial<WordsFor<RugProblem>>;
