import { parseArgs } from 'node:util';
import { dryScenarioShape, pastRugsShape } from '../contract/dryScenarioShape.ts';
import { readShape } from '../contract/readShape.ts';
import {
  asLearnt,
  type DryAnswer,
  type DryScenario,
  dryForecast,
  guessLogger,
  type LearntDrying,
  learnDrying,
  type RugAnswer,
  readLogger,
} from '../core/drying/index.ts';
import { dryAlarmWords } from '../text/dryAlarmWords.ts';
import { unknownFibreWords } from '../text/dryingWords.ts';
import { bindingWords } from '../text/dryRoomWords.ts';
import { loggerNoteWords } from '../text/loggerWords.ts';
import { nextReadingWords } from '../text/nextReadingWords.ts';
import { done } from '../units/index.ts';
import { type Command, printRefusal, type Terminal, WrongCall } from './command.ts';
import { readFile, readJson, theOnly } from './readArguments.ts';

const help = `wefthouse dry SCENARIO.json [--json] [--air LOGGER.csv [--from TIME]] [--past PAST.json]

Forecasts when the rugs of a drying room are dry, from its air, its machines, and what hangs in it.

  {"hours": 72, "uncertainty": true,
   "room": {"volumeM3": 100, "airC": 32, "startRh": 0.35, "airSpeed": 1.5, "airChangesPerHour": 0.5},
   "outside": {"airC": 15, "rh": 0.6},
   "dehumidifiers": [{"litresPerDay": 70, "ratedC": 30, "ratedRh": 0.8, "type": "refrigerant"}],
   "rugs": [{"id": "a", "areaM2": 6, "dryMassKg": 18, "fibres": {"wool": 0.75, "cotton": 0.25},
             "startRegain": 1.0, "posture": "hung", "hungAtHour": 0, "wettedAtHour": -2,
             "readings": [{"hour": 2, "massKg": 31.2}, {"hour": 3, "touch": "damp"}]}]}

Humidities are fractions of 1; regains are kg of water per kg of oven-dry rug; hours count from the start.
In place of airC, "air": [{"hour": 0, "airC": 30, "rh": 0.4}, …] gives scheduled or, with rh, measured air;
"measured" rows hold until the last of them, then the model goes on. Without airC and air the temperature
follows from "startC", "wallsWPerK", "heaters": [{"kw": 3, "untilC": 30}], the current of machines (kw) and
fans, and the water that evaporates. "openings": [{"fromHour": 20, "untilHour": 30, "airChangesPerHour": 4}]
are windows; "outside" may carry a "series" of rows; "fans": [{"airSpeed": 2, "kw": 0.2}]. Machines, fans and
heaters may carry "runs": [{"fromHour": 0, "untilHour": 8}]; rugs "turnings": [{"hour": 6, "posture": "mesh"}].
A reading is massKg, pocketRh, meterRegain (with points), meterAboveDry (points over a dry reference) or
touch (wet, damp, cool, dry). startRegain may be left to
"extraction" (centrifuge, squeegee and vacuum, drained, saturated); what is not said is saturated. How well
numbers are known: "spreads": {"startRegain", "resistance", "criticalRegain", "dryMass"}, each the spread of its
logarithm; a dryMass of 0.1 or more is a guess, and alarms then go by the late end of the 80 % interval. Faces are
2 for a hung rug, 1.5 on mesh, 1 on a floor; neither faces nor posture counts as 1.
hoursToTarget counts from hanging, targetAtHour on the scenario's clock; null is beyond the hours looked at.
A share of "unknown" among the fibres counts as the slowest natural fibre: cotton to its own dry standard, wool
to a stated targetRegain; unknownFibreAs of the answer says which.
With "uncertainty" (and "draws", "seed") hoursToTarget is the median, with 80 and 95 % bounds beside it.

A forecast is no proof: release a rug by the dry standard. Mind wet floors and current, the heat of a closed
room, the weight of wet rugs, and mould.

--air   a logger's file (time, temperature, humidity in any order) as the room's measured air; what is wrong
        in it is said by line. Times without a zone are taken as this computer's.
--from  the moment of hour 0, such as 2026-11-02T08:00:00Z; when absent, the logger's first row
--past  what past rugs of this room said once dry: a list of {"rug", "construction", "g", "resistance",
        "criticalRegain"}, each the "evidence" of an earlier answer or null; the room's factor and the numbers
        of each construction are learnt from it where the scenario does not give them
--json  print JSON`;

const percent = (regain: number): string => `${(regain * 100).toFixed(1)} %`;

const between = ([from, to]: readonly [number | null, number | null]): string => {
  if (from === null) return 'later than was looked at';
  return to === null
    ? `${from.toFixed(1)} h or later, beyond what was looked at`
    : `${from.toFixed(1)} to ${to.toFixed(1)} h`;
};

/** Hours count from hanging; a rug that hangs later gets the hour of the scenario's clock beside them. */
function rugWords(rug: RugAnswer): string {
  const { id, hoursToTarget, targetAtHour, targetRegain, endRegain, mouldIndex, spread } = rug;
  const isLater = hoursToTarget !== null && targetAtHour !== null && targetAtHour - hoursToTarget > 0.05;
  const clock = isLater ? `, at hour ${targetAtHour.toFixed(1)}` : '';
  const after = hoursToTarget === 0 ? 'when it is hung' : `${hoursToTarget?.toFixed(1)} h after hanging`;
  const reached =
    hoursToTarget === null
      ? `not dry in the hours looked at (dry is ${percent(targetRegain)} of its dry weight in water)`
      : `dry ${after}${clock} (water down to ${percent(targetRegain)} of its dry weight)`;
  const bounds =
    spread === undefined
      ? ''
      : `; four in five such rugs: ${between(spread.interval80)}; nineteen in twenty: ${between(spread.interval95)}`;
  return `${id}: ${reached}${bounds}. At the end ${percent(endRegain)} water, mould index ${mouldIndex.toFixed(2)} of 6.`;
}

/** Which way the water went; where the air outside is the damper one, it comes in. */
function waterWords(water: DryAnswer['water']): string {
  const { loadKg, byAirExchangeKg, byCondensationKg, whileMeasuredKg, byMachineKg } = water;
  const kg = (mass: number): string => `${Math.abs(mass).toFixed(1)} kg`;
  const machinesKg = byMachineKg.reduce((sum, mass) => sum + mass, 0);
  const ways: readonly (readonly [mass: number, words: string])[] = [
    [machinesKg, 'went into machines'],
    [byAirExchangeKg, byAirExchangeKg < 0 ? 'came in with outside air' : 'left with the air'],
    [byCondensationKg, 'ran down cold walls'],
    [whileMeasuredKg, 'went while the air was measured, by which way is not known'],
  ];
  const told = ways.filter(([mass]) => Math.abs(mass) >= 0.05).map(([mass, words]) => `${kg(mass)} ${words}`);
  return `of ${kg(loadKg)} of water at the start ${told.length === 0 ? 'nothing has gone' : told.join(', ')}`;
}

function airWords({ room, outside, exchangeDries }: DryAnswer['air']): readonly string[] {
  if (room === null || outside === null) return [];
  const grams = (ratio: number): string => `${(ratio * 1000).toFixed(1)} g/kg`;
  return [
    `Air: ${grams(room.humidityRatio)} in the room (dew point ${room.dewPointC.toFixed(1)} °C), ${grams(outside.humidityRatio)} outside; exchanging them ${exchangeDries ? 'dries' : 'wets'} the room as it is at the start.`,
  ];
}

/** Whenever something else holds drying up, the hour and what it is. */
const hourlyWords = (hourly: DryAnswer['hourly']): readonly string[] =>
  hourly
    .filter(({ binding }, i) => binding !== hourly[i - 1]?.binding)
    .map(
      ({ hour, airC, rh, offeredLPerH, demandedLPerH, binding }) =>
        `From hour ${hour}: ${airC.toFixed(0)} °C, ${(rh * 100).toFixed(0)} % RH; ${demandedLPerH.toFixed(1)} L/h demanded, ${offeredLPerH.toFixed(1)} L/h offered; ${bindingWords[binding]}.`,
    );

function answerWords({ air, rugs, endRh, endC, water, hourly, alarms }: DryAnswer): string {
  return [
    ...rugs.map(rugWords),
    ...alarms.map((alarm) => `! ${dryAlarmWords(alarm)}`),
    ...rugs.flatMap(({ id, unknownFibreAs: taken }) =>
      taken === null ? [] : [unknownFibreWords(id, taken)],
    ),
    ...rugs.flatMap(({ id, spread }) =>
      (spread?.next ?? []).slice(0, 1).map((next) => `${id}: ${nextReadingWords(next)}`),
    ),
    `Room: ends at ${endC.toFixed(0)} °C and ${(endRh * 100).toFixed(0)} % RH; ${waterWords(water)}.`,
    ...airWords(air),
    'Litres demanded are what the rugs would give off, and litres offered what machines and outside air can take out, in the room at 45 % RH.',
    ...hourlyWords(hourly),
    'A forecast is no proof: release by the dry standard.',
  ].join('\n');
}

const learntWords = ({ g }: LearntDrying): readonly string[] => [
  `Learnt from ${g.runs} past rugs: this room dries ${g.likely.toFixed(2)} times as fast as reckoned (give or take ${(g.spread * 100).toFixed(0)} %).`,
  ...g.standAlone.map(
    (rug) => `Past rug ${rug} fits none of the others and hardly counts: look at its readings.`,
  ),
];

const msPerHour = 3_600_000;
/** Of this computer's place. */
const offsetAt = (utcMs: number): number => -new Date(utcMs).getTimezoneOffset();

/** A logger's file as measured air of the scenario, and what had to be said of it. */
async function loggedAir(file: string, from: string | null, terminal: Terminal) {
  const begin = from === null ? null : Date.parse(from);
  if (begin !== null && Number.isNaN(begin)) throw new WrongCall(`${from} is no moment.`);
  const text = new TextDecoder().decode(await readFile(file, terminal));
  const guess = guessLogger(text);
  if (guess === null) throw new WrongCall(`No row of ${file} holds a time and two numbers.`);
  const read = readLogger(text, guess.mapping, offsetAt);
  if (!read.ok) return read;
  const { rows, notes } = read.value;
  const zero = begin ?? rows[0]?.at ?? 0;
  const unsure = guess.sure
    ? []
    : [`Taken for ${guess.mapping.timeForm}, temperature before humidity: look whether that is so.`];
  return done({
    measured: rows.map(({ at, airC, rh }) => ({ hour: (at - zero) / msPerHour, airC, rh })),
    said: [...unsure, ...notes.map(loggerNoteWords)],
  });
}

export const dryCommand: Command = {
  name: 'dry',
  summary: 'forecast when the rugs of a drying room are dry',
  help,
  async run(args, terminal) {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        json: { type: 'boolean', default: false },
        air: { type: 'string' },
        from: { type: 'string' },
        past: { type: 'string' },
      },
    });
    const file = theOnly(positionals, 'Give one scenario file.');
    const read = readShape(dryScenarioShape, await readJson(file, terminal));
    if (!read.ok) return printRefusal(read.problem, values.json, terminal);
    let { room } = read.value;
    const said: string[] = [];
    if (values.air !== undefined) {
      const logged = await loggedAir(values.air, values.from ?? null, terminal);
      if (!logged.ok) return printRefusal(logged.problem, values.json, terminal);
      room = { ...room, measured: logged.value.measured };
      said.push(...logged.value.said);
    }
    let scenario: DryScenario = { ...read.value, room, dehumidifiers: read.value.dehumidifiers ?? [] };
    if (values.past !== undefined) {
      const past = readShape(pastRugsShape, await readJson(values.past, terminal));
      if (!past.ok) return printRefusal(past.problem, values.json, terminal);
      const learning = learnDrying(past.value);
      scenario = asLearnt(scenario, learning);
      said.push(...learntWords(learning));
    }
    const answer = dryForecast(scenario);
    if (!answer.ok) return printRefusal(answer.problem, values.json, terminal);
    terminal.print(
      values.json
        ? JSON.stringify({ ...answer.value, ...(said.length === 0 ? {} : { said }) })
        : [...said, answerWords(answer.value)].join('\n'),
    );
    return 0;
  },
};
