import { parseArgs } from 'node:util';
import * as z from 'zod';
import {
  bathPh,
  bufferCapacity,
  dose,
  gasWarnings,
  solutionOf,
  usualDoseUncertainty,
} from '../core/chemistry/index.ts';
import { problemWords } from '../text/problemWords.ts';
import { type Command, printRefusal, readJson, WrongCall } from './command.ts';

const help = `wefthouse mix SCENARIO.json [--json]

Computes the pH of a bath from its water and what is put in, or the dose of an agent to a target pH.

  {"litres": 1, "temperatureC": 25, "water": {"alkalinityMgPerLCaCO3": 250},
   "activity": "davies", "openToAir": false,
   "add": [{"agent": "citric acid, anhydrous", "grams": 0.5}],
   "target": {"agent": "citric acid, anhydrous", "pH": 5}}

An agent is given by its common chemical name in grams, or in millilitres with "densityGPerMl"; "strength"
is its share by mass (0.8 for 80 %). A computed pH is a plan: measure the bath before use. Gloves and
goggles; the supplier's safety data sheet comes first.

--json  print JSON`;

const agentAmount = z.strictObject({
  agent: z.string(),
  grams: z.number().optional(),
  millilitres: z.number().optional(),
  strength: z.number().optional(),
  densityGPerMl: z.number().optional(),
});
const scenario = z.strictObject({
  litres: z.number().default(1),
  temperatureC: z.number().default(25),
  water: z.strictObject({ alkalinityMgPerLCaCO3: z.number() }),
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
    const { water, target, add, ...bath } = readScenario(await readJson(file, terminal));
    const recipe: Recipe = { ...bath, ...water, add };
    const dosed =
      target === undefined
        ? null
        : dose(recipe, target.agent, target.pH, {
            strength: target.strengthUncertainty ?? usualDoseUncertainty.strength,
            alkalinity: target.alkalinityUncertainty ?? usualDoseUncertainty.alkalinity,
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
    const capacity = bufferCapacity(solution.value);
    if (!capacity.ok) return printRefusal(capacity.problem, problemWords, values.json, terminal);
    const { pH, ionicStrengthMolPerL } = found.value;
    if (values.json) {
      terminal.print(
        JSON.stringify({
          ...{ pH, ionicStrengthMolPerL, bufferCapacityMolPerLPerPh: capacity.value },
          ...(dosed === null ? {} : dosed.value),
          warnings,
        }),
      );
      return 0;
    }
    const lines = [
      `pH ${pH.toFixed(2)} computed; measure before use.`,
      `Buffer capacity ${(capacity.value * 1000).toPrecision(2)} mmol/L per pH.`,
    ];
    if (dosed !== null) {
      const [least, most] = dosed.value.interval;
      lines.unshift(
        `${agent}: ${dosed.value.grams.toPrecision(3)} g (${least.toPrecision(3)} to ${most.toPrecision(3)} g with the strength and water as uncertain as stated)`,
      );
    }
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
