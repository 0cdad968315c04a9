import { parseArgs } from 'node:util';
import { mixShape } from '../contract/mixShape.ts';
import { readShape } from '../contract/readShape.ts';
import { type Command, printRefusal, WrongCall } from './command.ts';
import { type MixAnswer, mixAnswer } from './mixAnswer.ts';
import { mixText } from './mixText.ts';
import { readJson, theOnly } from './readArguments.ts';

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

An agent is given by its chemical name, with its hydrate (sodium carbonate, decahydrate), by its formula, or
by a household name (washing soda, white vinegar). Its amount is one of grams, kilograms, milligrams, moles,
millilitres, litres; volumes need "densityGPerMl" where the name stands for no liquid of known strength.
"strength" is its share by mass (0.8 for 80 %), in "add" and in "target". "litres" is the whole bath.
Without the water's alkalinity the worst is assumed and said: 0 to 400 mg/L CaCO₃. Alkalinity is taken as
bicarbonate; with "openToAir" the bath stands in balance with the air. A computed pH is a plan: measure the
bath before use. Gloves and goggles; the supplier's safety data sheet comes first.

--json  print JSON`;

/** The JSON form: names of the answer as they have always been, the dose and the parts beside the pH. */
function asJson({ dosed, assumed, parts, warnings, phInterval, notes, ...bath }: MixAnswer): string {
  const { densityGPerMl, ...dose } = dosed ?? { densityGPerMl: null };
  const millilitres =
    dosed !== null && densityGPerMl !== null ? { millilitres: dosed.grams / densityGPerMl } : {};
  return JSON.stringify({
    ...bath,
    phInterval,
    ...dose,
    ...millilitres,
    ...assumed,
    ...parts,
    warnings,
    notes,
  });
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
    const file = theOnly(positionals, 'Give one scenario file.');
    const read = readShape(mixShape, await readJson(file, terminal));
    if (!read.ok) return printRefusal(read.problem, values.json, terminal);
    const scenario = read.value;
    if (scenario.water.alkalinityMgPerLCaCO3 === undefined && scenario.effluent !== undefined) {
      throw new WrongCall(
        'effluent: needs water.alkalinityMgPerLCaCO3; what may go to the sewer is not guessed.',
      );
    }
    const answer = mixAnswer(scenario);
    if (!answer.ok) return printRefusal(answer.problem, values.json, terminal);
    terminal.print(values.json ? asJson(answer.value) : mixText(answer.value, scenario));
    return 0;
  },
};
