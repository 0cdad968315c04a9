import settings from '../../../data/drying/settings.json' with { type: 'json' };
import { readTable } from '../air/index.ts';
import { wetClockHours } from '../mould/index.ts';
import type { DryAlarm, RugAnswer } from './dryAnswer.ts';
import { secondsPerHour } from './givenAir.ts';
import { exposedAt, type PreparedRoom, type PreparedRug } from './preparedRoom.ts';
import type { RoomHour } from './roomHours.ts';
import type { RoomCourse } from './runRoom.ts';
import type { DryScenario } from './scenario.ts';
import { readingKind } from './scenarioProblem.ts';

/** A rug so near its rest gives off no more worth waiting for [kg/kg]. */
const nearRest = 0.01;

/** Water taken up again that is worth a word [kg/kg]. */
const dampAgainRegain = 0.005;

/** Warmth beyond a bound that no thermometer of a workshop tells [K]. */
const slackC = 0.5;

/** Rugs of a fibre that bears little warmth, while they hang in more. */
function tooWarm(
  { rugs }: DryScenario,
  room: PreparedRoom,
  hourly: readonly RoomHour[],
): readonly DryAlarm[] {
  const { tender, mostTenderC } = settings.goodAir;
  return rugs.flatMap(({ id, fibres }, at): readonly DryAlarm[] => {
    const rug = room.rugs[at];
    if (rug === undefined || !tender.some((fibre) => fibre in fibres)) return [];
    const hangs = hourly.filter(({ hour }) => exposedAt(rug, hour * secondsPerHour) > 0);
    const airC = Math.max(...hangs.map((one) => one.airC));
    return airC > mostTenderC + slackC ? [{ code: 'too-warm-for-fibre', rug: id, airC }] : [];
  });
}

/**
 * From first wetting to the target, as alarms judge it: the median, or, where the dry mass is only guessed, the
 * late end of the 80 % interval, since unknown counts as the worst case.
 */
function hoursWetJudged({ hoursWet, spread }: RugAnswer, rug: PreparedRug | undefined): number | null {
  if (rug === undefined || spread === undefined || rug.spreads.dryMass < settings.guessedMassSpread) {
    return hoursWet;
  }
  const [, late] = spread.interval80;
  return late === null ? null : late + (rug.hungAt - rug.wettedAt) / secondsPerHour;
}

/**
 * What has to be said before it happens.
 *
 * @param scenario - as given
 * @param room - the same, prepared
 * @param rugs - answers by rug
 * @param course - the likely run
 * @param hourly - the room along it
 * @source workshop-setting (data/drying/settings.json); the wet clock: epa-mould-course
 */
export function alarmsOf(
  scenario: DryScenario,
  room: PreparedRoom,
  rugs: readonly RugAnswer[],
  course: RoomCourse,
  hourly: readonly RoomHour[],
): readonly DryAlarm[] {
  const ofRugs = rugs.flatMap((answer, at): readonly DryAlarm[] => {
    const { id: rug, hoursToTarget, endRegain, mouldIndex, spread, targetRegain } = answer;
    const prepared = room.rugs[at];
    const hoursWet = hoursWetJudged(answer, prepared);
    const atRest =
      prepared === undefined ? 0 : readTable(prepared.desorption.regain, Math.min(1, course.endRh));
    const inView = room.seconds / secondsPerHour - (prepared?.wettedAt ?? 0) / secondsPerHour;
    const pastRed = hoursWet === null ? inView > wetClockHours.redHours : hoursWet > wetClockHours.redHours;
    const chanceRed = spread?.chanceRed ?? (pastRed ? 1 : 0);
    const alarms: DryAlarm[] = [];
    if (hoursToTarget === null && atRest >= targetRegain && endRegain < atRest + nearRest) {
      alarms.push({ code: 'target-out-of-reach', rug, atRest, target: targetRegain });
    } else if (hoursToTarget === null) alarms.push({ code: 'not-dry-in-time', rug, endRegain });
    if (inView > wetClockHours.redHours && (pastRed || chanceRed >= settings.alarmChance)) {
      alarms.push({ code: 'wet-past-red', rug, chance: spread === undefined ? null : chanceRed });
    } else if (hoursWet !== null && hoursWet > wetClockHours.amberHours) {
      alarms.push({ code: 'wet-past-amber', rug });
    }
    const again = answer.course.find(
      ({ hour, regain }) =>
        hour > (answer.targetAtHour ?? Number.POSITIVE_INFINITY) + 1 &&
        regain > targetRegain + dampAgainRegain,
    );
    if (again !== undefined) alarms.push({ code: 'damp-again', rug, hour: again.hour, regain: again.regain });
    if (mouldIndex >= 1) alarms.push({ code: 'mould-may-begin', rug, mouldIndex });
    for (const { reading, spreads, outlier } of spread?.readings ?? []) {
      if (!outlier) continue;
      const kind = readingKind(reading);
      alarms.push({ code: 'reading-stands-alone', rug, hour: reading.hour, kind, spreads });
    }
    if (spread?.contradicted === true) alarms.push({ code: 'readings-contradict-model', rug });
    return alarms;
  });
  const { peakRh, peakC } = course;
  const ofRoom: DryAlarm[] = tooWarm(scenario, room, hourly).slice();
  if (peakRh >= settings.roomSaturatesAtRh) ofRoom.push({ code: 'room-saturates', peakRh });
  if (peakC > settings.goodAir.mostC + slackC) ofRoom.push({ code: 'room-too-hot', peakC });
  return [...ofRugs, ...ofRoom];
}
