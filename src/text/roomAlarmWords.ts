import type { PlaceWarning, RoomAlarm, RoomAssumption } from '../dossier/index.ts';
import { measureWords, type UnitSystem } from '../units/index.ts';
import { dryAlarmWords, pastRedWords } from './dryAlarmWords.ts';
import { problemWords } from './problemWords.ts';

const percent = (ratio: number) => `${Math.round(ratio * 100)} %`;

/** How rugs and instants are named where the words are shown. */
export interface RoomNames {
  readonly rug: (rug: string) => string;
  readonly at: (instant: string) => string;
  /** An hour of the forecast as an instant. */
  readonly instant: (hour: number) => string;
  /** In which the workshop reads; metric when absent. */
  readonly units?: UnitSystem;
}

/** What an alarm of a drying room says, and what to do. */
export function roomAlarmWords(alarm: RoomAlarm, { rug, at, instant, units = 'metric' }: RoomNames): string {
  const warm = (celsius: number) => measureWords('temperature', celsius, units);
  switch (alarm.code) {
    case 'size-missing':
      return `${rug(alarm.rug)}: wet, and nobody measured it, so it is in no forecast: neither its own end nor the water it gives its neighbours. Measure its length and width where it hangs, on its dossier.`;
    case 'no-forecast': {
      const { happened, now } = problemWords(alarm.problem);
      return `No forecast of this room, so go by the clock. ${happened} ${now}`;
    }
    case 'reading-overdue':
      return `${rug(alarm.rug)}: not read since ${at(alarm.since)}. Weigh it, or feel it and tape a pocket.`;
    case 'turning-due':
      return alarm.overdue
        ? `${rug(alarm.rug)}: not turned since ${at(alarm.since)}. Turn it now; two people for a heavy wet rug.`
        : `${rug(alarm.rug)}: turn it within two hours (last ${at(alarm.since)}).`;
    case 'air-not-read':
      return alarm.since === null
        ? 'Nobody has read the room’s air. Read thermometer and hygrometer: no forecast is possible without.'
        : `The room’s air was last read ${at(alarm.since)}. Read it: the forecast goes on from there.`;
    case 'room-damp':
      return `The room stands at ${percent(alarm.rh)} RH; ${percent(alarm.most)} or less dries well. Another machine, or drier air from outside.`;
    case 'machine-off':
      return `${alarm.machine} stands still while rugs are wet${alarm.since === null ? '' : `, since ${at(alarm.since)}`}. Switch it on, dry hands, or record that it runs.`;
    case 'heat-not-told':
      return `${rug(alarm.rug)}: put to dry as without heat, and ${alarm.by.join(' and ')} runs. Switch it off, or say at the rug, by “Another place”, that heat is on: solvent left in a rug catches fire in heat.`;
    case 'too-warm-for-plan':
      return `${rug(alarm.rug)}: the room has ${warm(alarm.airC)}, its plan allows ${warm(alarm.mostC)}. Cool the room or move the rug.`;
    case 'wet-past-red':
      return `${pastRedWords({ ...alarm, rug: rug(alarm.rug) })} More air, fewer neighbours, another machine, or lay it where both faces dry.`;
    default:
      return dryAlarmWords(
        'rug' in alarm ? { ...alarm, rug: rug(alarm.rug) } : alarm,
        units,
        (hour) => `at ${at(instant(hour))}`,
      );
  }
}

/** What was assumed, and what to find out. */
export function assumptionWords(
  assumption: RoomAssumption,
  { rug, at, units = 'metric' }: Omit<RoomNames, 'instant'>,
): string {
  switch (assumption.code) {
    case 'outside-not-read':
      return `The air outside was not read today: as warm as the room and ${percent(assumption.rh)} RH is assumed, which dries nothing. Read it outside in the shade.`;
    case 'mass-by-construction':
      return `${rug(assumption.rug)}: not weighed before the water; its dry mass is known only by its construction, so its forecast is wide and alarms go by its late end. Weigh it as it dries: each weighing narrows it.`;
    case 'extraction-unknown':
      return `${rug(assumption.rug)}: nobody said how water was taken out; it counts as soaked. Weigh it, or say how.`;
    case 'fibres-unknown':
      return `${rug(assumption.rug)}: pile fibre unknown. It counts as cotton, the slowest natural fibre to its dry standard; of another fibre it may be dry sooner. Identify it.`;
    case 'mass-below-bone-dry':
      return `${rug(assumption.rug)}: ${measureWords('mass', assumption.massKg, units)} at ${at(assumption.when)} is less than the bone-dry rug and was left out. Check the scale and weigh again.`;
  }
}

/** What to warn of at a pole or mesh. */
export function placeWarningWords(warning: PlaceWarning, units: UnitSystem): string {
  const kg = (mass: number) => measureWords('load', mass, units);
  const gap = (mm: number) => measureWords('gap', mm, units);
  const span = (mm: number) => measureWords('span', mm, units);
  const wanted = `${gap(100)} to ${gap(150)} let the air through (workshop setting)`;
  switch (warning.code) {
    case 'pole-overloaded':
      return `${kg(warning.loadKg)} wet on a pole for ${kg(warning.mostKg)}: move a rug before it gives way. Nobody under it.`;
    case 'pole-strength-unknown':
      return `${kg(warning.loadKg)} wet; nobody recorded what this pole carries. Find out before more is hung.`;
    case 'too-close': {
      const where =
        warning.between === undefined ? 'rugs' : `${warning.between[0]} and ${warning.between[1]}`;
      return `Only ${gap(Math.max(0, warning.gapMm))} between ${where}; ${wanted}.`;
    }
    case 'overlaps':
      return `${warning.between[0]} and ${warning.between[1]} overlap by ${gap(warning.byMm)} as measured: they do not dry there. Move one.`;
    case 'past-the-end':
      return `${warning.tag} reaches ${gap(warning.byMm)} past the end, as measured. Move it in, or hang it elsewhere.`;
    case 'does-not-fit':
      return `The rugs need ${span(warning.neededMm)}, there are ${span(warning.lengthMm)}: they overlap and do not dry there.`;
    case 'poles-too-close':
      return `Only ${gap(warning.gapMm)} to the next pole; ${wanted}.`;
  }
}
