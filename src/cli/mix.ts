import { parseArgs } from 'node:util';
import * as z from 'zod';
import {
  bathPh,
  dose,
  gasWarnings,
  phOfBath,
  solutionOf,
  usualDoseUncertainty,
  waterToReckonWith,
} from '../core/chemistry/index.ts';
import { problemWords } from '../text/problemWords.ts';
import { type Command, printRefusal, readJson, WrongCall } from './command.ts';
import { agentAmount, answerParts, mixParts } from './mixParts.ts';

const help = `wefthouse mix SCENARIO.json [--json]

Computes the pH of a bath from its water and what is put in, or the dose of an agent to a target pH.

  {"litres": 1, "temperatureC": 25, "water": {"alkalinityMgPerLCaCO3": 250},
   "activity": "davies", "openToAir": false,
   "add": [{"agent": "citric acid, anhydrous", "grams": 0.5}],
   "target": {"agent": "citric acid, anhydrous", "pH": 5}}

Beside these, as wanted (each is answered under its own name with --json):
  "carryOver": {"massKg": 10, "retainedLPerKg": 0.33, "freshLitres": 50, "pH": 5.5}
  "effluent": {"with": [{"litres": 60, "temperatureC": 20, "alkalinityMgPerLCaCO3": 250, "add": []}],
               "mostPh": 9, "mostTemperatureC": 40}
  "hardness": {"value": 14, "unit": "°dH", "agent": "soap, as sodium oleate"}
  "surfactant": {"areaM2": 6} or {"activeGPerL": 0.5, "strength": 0.25}
  "rinse": {"massKg": 10, "end": 0.005, "prices": {"waterPerM3": 5, "hour": 30}}
  "peroxide": {"molPerL": 0.88}

Without the water's alkalinity the worst is assumed and said: 0 to 400 mg/L CaCO₃. An agent is given by its common chemical name in grams, or in millilitres with "densityGPerMl"; "strength"
is its share by mass (0.8 for 80 %). A computed pH is a plan: measure the bath before use. Gloves and
goggles; the supplier's safety data sheet comes first.

--json  print JSON`;

const scenario = z.strictObject({
  litres: z.number().default(1),
  temperatureC: z.number().default(25),
  water: z.strictObject({ alkalinityMgPerLCaCO3: z.number().optional() }).default({}),
  activity: z.enum(['ideal', 'davies']).default('davies'),
  openToAir: z.boolean().default(false),
  add: z.array(agentAmount).default([]),
  target: z
    .strictObject({
      agent: z.string(),
      pH: z.number(),
      strengthUncertainty: z.number().min(0).max(0.9).optional(),
      alkalinityUncertainty: z.number().min(0).max(0.9).optional(),
    })
    .optional(),
  ...mixParts,
});

const readScenario = (given: unknown) => {
  const read = scenario.safeParse(given);
  if (read.success) return read.data;
  const [issue] = read.error.issues;
  throw new WrongCall(
    `${issue?.path.join('.') || 'The scenario'}: ${issue?.message ?? 'not of the right form'}.`,
  );
};

type Recipe = Parameters<typeof solutionOf>[0];
/** `phNow` as words. */
const spaced = (name: string): string =>
  name
    .replaceAll('pH', 'ph')
    .replaceAll(/(?<=[a-z])(?=[A-Z])/g, ' ')
    .toLowerCase()
    .replaceAll(/\bph/g, 'pH')
    .replace(/ c$/, ' °C');

/** An answer read aloud: every figure after its name, which carries its unit. */
function inWords(answer: unknown): string {
  if (Array.isArray(answer)) return answer.map(inWords).join('; ');
  if (typeof answer === 'number') return String(Number(answer.toPrecision(4)));
  if (typeof answer === 'boolean') return answer ? 'yes' : 'no';
  if (typeof answer !== 'object' || answer === null) return String(answer ?? 'none');
  return Object.entries(answer)
    .map(([name, value]) => `${spaced(name)} ${inWords(value)}`)
    .join(', ');
}

export const mixCommand: Command = {
  name: 'mix',
  summary: 'compute the pH of a bath, or the dose to a target pH',
  help,
  async run(args, terminal) {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: { json: { type: 'boolean', default: false } },
    });
    const [file, ...more] = positionals;
    if (file === undefined || more.length > 0) throw new WrongCall('Give one scenario file.');
    const { water, target, add, litres, temperatureC, activity, openToAir, ...asked } = readScenario(
      await readJson(file, terminal),
    );
    const { alkalinity } = waterToReckonWith(null, '');
    const stated = water.alkalinityMgPerLCaCO3;
    if (stated === undefined && asked.effluent !== undefined) {
      throw new WrongCall(
        'effluent: needs water.alkalinityMgPerLCaCO3; what may go to the sewer is not guessed.',
      );
    }
    const recipe: Recipe = {
      ...{ litres, temperatureC, activity, openToAir, add },
      alkalinityMgPerLCaCO3: stated ?? alkalinity.value,
    };
    const dosed =
      target === undefined
        ? null
        : dose(recipe, target.agent, target.pH, {
            strength: target.strengthUncertainty ?? usualDoseUncertainty.strength,
            alkalinity:
              stated === undefined ? 1 : (target.alkalinityUncertainty ?? usualDoseUncertainty.alkalinity),
          });
    if (dosed?.ok === false) return printRefusal(dosed.problem, problemWords, values.json, terminal);
    const agent = target?.agent;
    const whole: Recipe =
      dosed === null || agent === undefined
        ? recipe
        : { ...recipe, add: [...recipe.add, { agent, grams: dosed.value.grams }] };
    const solution = solutionOf(whole);
    if (!solution.ok) return printRefusal(solution.problem, problemWords, values.json, terminal);
    const found = bathPh(solution.value);
    if (!found.ok) return printRefusal(found.problem, problemWords, values.json, terminal);
    const warnings = gasWarnings(found.value, solution.value.acidsMolPerL);
    const told = answerParts(whole, asked, {
      ...usualDoseUncertainty,
      ...(stated === undefined ? { alkalinity: 1 } : {}),
    });
    if (!told.ok) return printRefusal(told.problem, problemWords, values.json, terminal);
    const { pH, ionicStrengthMolPerL } = found.value;
    const ends = [alkalinity.least, alkalinity.most].map((alkalinityMgPerLCaCO3) =>
      phOfBath({ ...whole, alkalinityMgPerLCaCO3 }),
    );
    const phRange = ends.flatMap((end) => (end.ok ? [end.value] : []));
    const assumed =
      stated === undefined
        ? { alkalinityAssumed: { least: alkalinity.least, most: alkalinity.most }, phRange }
        : {};
    if (values.json) {
      terminal.print(
        JSON.stringify({
          ...{ pH, ionicStrengthMolPerL, bufferCapacityMolPerLPerPh: found.value.bufferCapacityMolPerLPerPh },
          ...(dosed === null ? {} : dosed.value),
          ...assumed,
          ...told.value,
          warnings,
        }),
      );
      return 0;
    }
    const lines = [
      `pH ${pH.toFixed(2)} computed; measure before use.`,
      `Buffer capacity ${(found.value.bufferCapacityMolPerLPerPh * 1000).toPrecision(2)} mmol/L per pH.`,
    ];
    if (dosed !== null) {
      const [least, most] = dosed.value.interval;
      lines.unshift(
        `${agent}: ${dosed.value.grams.toPrecision(3)} g (${least.toPrecision(3)} to ${most.toPrecision(3)} g with the strength and water as uncertain as stated)`,
      );
    }
    if (stated === undefined) {
      lines.unshift(
        `The water’s alkalinity is not given; ${alkalinity.least} to ${alkalinity.most} mg/L CaCO₃ is assumed, so the pH may be ${phRange.map((end) => end.toFixed(1)).join(' to ')}. Ask the water supplier.`,
      );
    }
    for (const [name, answer] of Object.entries(told.value))
      lines.push(`${spaced(name)}: ${inWords(answer)}.`);
    for (const { gas, level } of warnings) {
      lines.push(
        level === 'blocked'
          ? `Blocked: this bath gives off ${gas}.`
          : `Ventilate: ${gas} can be smelt from this bath.`,
      );
    }
    lines.push('Gloves and goggles. Follow the supplier’s safety data sheet and local discharge rules.');
    terminal.print(lines.join('\n'));
    return 0;
  },
};
