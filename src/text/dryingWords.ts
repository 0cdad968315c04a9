import type { DryingProblem } from '../core/drying/index.ts';
import { quantityWords } from './quantityWords.ts';
import type { WordsFor } from './words.ts';

/** What a reading of a drying rug is called. */
/** That a rug's unknown fibre was taken as the slowest to dry, and what to find out. */
export const unknownFibreWords = (rug: string, taken: string): string =>
  `${rug}: fibre unknown. It counts as ${taken}, the slowest natural fibre to dry; of another fibre it may be dry sooner. Identify it.`;

export const readingNames: Readonly<Record<string, string>> = {
  massKg: 'weighing',
  pocketRh: 'pocket humidity',
  meterRegain: 'meter reading',
  meterAboveDry: 'meter reading against its dry reference',
  touch: 'touch',
};

export const dryingWords = {
  'out-of-range': quantityWords['out-of-range'],
  'drying-room-empty': () => ({
    happened: 'No rug hangs in this room.',
    matters: 'A forecast is of a rug; an empty room has nothing to dry.',
    now: 'Name at least one rug with its area, oven-dry mass and fibres.',
  }),
  'drying-air-missing': ({ field }) => ({
    happened: `${field} is not given.`,
    matters: 'How much water the air takes depends first of all on its temperature and humidity.',
    now: 'Read the room’s thermometer and hygrometer: give room.airC and room.startRh, or room.air or room.measured with rows of hour, airC and rh; where the temperature is to follow from the room’s heat, room.startC.',
  }),
  'rug-named-twice': ({ rug }) => ({
    happened: `Two rugs are called ${rug}.`,
    matters: 'A reading or a forecast could be taken for the other one’s.',
    now: 'Give each rug an id of its own.',
  }),
  'fibre-shares-off': ({ rug, sum }) => ({
    happened: `The fibre shares of rug ${rug} add up to ${sum.toFixed(3)}.`,
    matters: 'The water a rug holds at rest is reckoned from its fibres by dry mass.',
    now: 'Give shares between 0 and 1 that add up to 1; "unknown" may be one of them.',
  }),
  'drying-room-runs-away': ({ hour, airC }) => ({
    happened: `By the heat it is given the room would be at ${airC.toFixed(0)} °C by hour ${Math.ceil(hour)}.`,
    matters: 'No drying room is so hot or so cold, so that every hour reckoned in it would be wrong.',
    now: 'Look at the litres and kW of machines and heaters, give heaters an untilC, and check wallsWPerK, air changes and outside air.',
  }),
  'critical-regain-too-low': ({ rug, value, least }) => ({
    happened: `criticalRegain of rug ${rug} is ${value}.`,
    matters: `Below ${least.toFixed(3)} the fibre itself holds the water, and the model’s two stages no longer hold.`,
    now: `Give a critical regain above ${least.toFixed(3)}, usually near 0.6.`,
  }),
  'machine-rating-unstated': ({ machine, missing }) => ({
    happened: `Dehumidifier ${machine} is rated at no stated condition: ${missing} is missing.`,
    matters: 'Litres a day at 30 °C and 80 % can be a third of that at 20 °C and 50 %.',
    now: `Give ${missing} from the machine’s plate, or a pair at which you measured it.`,
  }),
  'logger-gap': ({ fromHour, toHour, mostHours }) => ({
    happened: `The logger is silent from hour ${fromHour} to hour ${toHour}.`,
    matters: `What the air did for more than ${mostHours} h is not known, and a straight line over it would look measured.`,
    now: 'Fill the gap from another logger, or begin the scenario after it with a weighing.',
  }),
  'logger-clock-back': ({ hour, afterHour }) => ({
    happened: `The logger’s time goes from hour ${afterHour} to hour ${hour}.`,
    matters: 'After a change of clocks or a reset, readings stand at the wrong hour.',
    now: 'Give the hours since the start without changes of the clock, each later than the one before.',
  }),
  'readings-out-of-order': ({ rug, hour, afterHour }) => ({
    happened: `Rug ${rug} has a reading at hour ${hour} after one at hour ${afterHour}.`,
    matters: 'A reading at the wrong hour bends the forecast without showing it.',
    now: 'Put the readings in the order they were taken, by hours since the start.',
  }),
  'turning-unsaid': ({ rug, hour }) => ({
    happened: `Rug ${rug} is turned at hour ${hour}, but not into which posture.`,
    matters: 'Hung in moving air a rug dries about twice as fast as flat on a floor.',
    now: 'Give the posture from that hour on (hung, mesh, floor), or the faces that are free.',
  }),
  'reading-doubled': ({ rug, hour, kind }) => ({
    happened: `Rug ${rug} has two readings of the same kind (${readingNames[kind] ?? kind}) at hour ${hour}.`,
    matters: 'A reading counted twice would count for more than it says.',
    now: 'Keep one of them, or give the hour at which the second was taken.',
  }),
  'mass-below-bone-dry': ({ rug, massKg, dryMassKg }) => ({
    happened: `Rug ${rug} was weighed at ${massKg} kg, less than its oven-dry mass of ${dryMassKg} kg.`,
    matters:
      'A rug in a room always holds some water, so one of the two is wrong: the scale, the rug or the dry mass.',
    now: 'Weigh again, check that it is this rug, and work the dry mass out again if much soil was washed out.',
  }),
} satisfies WordsFor<DryingProblem>;
