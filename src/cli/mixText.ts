import type { MixScenario } from '../contract/mixShape.ts';
import type { Correction, SewerReason } from '../core/chemistry/index.ts';
import type { MixAnswer, MixNote, MixParts } from './mixAnswer.ts';

const figures = (value: number): string => String(Number(value.toPrecision(3)));

/** Grams as they are weighed: 12.4 g, 1.24 kg, 56 mg. */
const mass = (grams: number): string =>
  grams >= 1000
    ? `${figures(grams / 1000)} kg`
    : grams < 0.1 && grams > 0
      ? `${figures(grams * 1000)} mg`
      : `${figures(grams)} g`;
const volume = (millilitres: number): string =>
  millilitres >= 1000 ? `${figures(millilitres / 1000)} L` : `${figures(millilitres)} mL`;
const masses = ([least, most]: readonly [number, number]): string => `${mass(least)} to ${mass(most)}`;
const range = ({ least, most }: { readonly least: number; readonly most: number }, digits = 0): string =>
  `${least.toFixed(digits)} to ${most.toFixed(digits)}`;

const noteWords = (note: MixNote): string => {
  switch (note.note) {
    case 'strength assumed':
      return `“${note.agent}” is taken as ${figures(note.strength * 100)} % ${note.of}. Read the label and give its strength.`;
    case 'water of crystals assumed':
      return `“${note.agent}” is taken as ${note.of}. A form with more or less water of crystallisation needs another mass: name it as the label does.`;
    case 'ideal at such strength':
      return `At ${figures(note.ionicStrengthMolPerL)} mol/L of ions an ideal pH is a rough guide only.`;
  }
};

function doseLines({ dosed, pH }: MixAnswer, { target, litres }: MixScenario): readonly string[] {
  if (dosed === null || target === undefined) return [];
  const { grams, interval, densityGPerMl } = dosed;
  const strength = target.strength === undefined ? '' : ` of ${figures(target.strength * 100)} %`;
  const asPoured = densityGPerMl === null ? '' : `, which is ${volume(grams / densityGPerMl)}`;
  return [
    `Weigh ${mass(grams)} of ${target.agent}${strength}${asPoured} for ${figures(litres)} L, to pH ${pH.toFixed(1)}.`,
    `It may truly need ${masses(interval)}: strength and water are not known better. Begin with the least, stir, measure, and add the rest in parts.`,
  ];
}

const correctionWords = ({ agent, grams, interval }: Correction): string =>
  agent === null
    ? 'Nothing is needed.'
    : `Add ${mass(grams)} of ${agent} (${masses(interval)}), in parts, measuring between.`;

const reasonWords: Readonly<Record<SewerReason, string>> = {
  'too acid': 'it is too acid',
  'too alkaline': 'it is too alkaline',
  'diluted only': 'only water brings it within the limits, and diluting is no treatment',
  'too hot': 'a bath in it is too hot',
};

const wayWords = {
  'fill and drain': (fills: number) => `fill and drain ${fills} times`,
  'fill, drain and extract': (fills: number) => `fill, drain and extract ${fills} times`,
  flow: () => 'let water flow through',
  'extract, then flow': () => 'extract, then let water flow through',
} as const;

function partLines(parts: MixParts, scenario: MixScenario): readonly string[] {
  const { carryOver, effluent, hardness, surfactant, rinse, peroxide } = parts;
  const lines: string[] = [];
  if (carryOver !== undefined) {
    const { heldLitres, phNow } = carryOver;
    lines.push(
      `The rug still holds ${figures(heldLitres)} L of it; with its next water that is pH ${phNow.toFixed(1)}. To pH ${figures(scenario.carryOver?.pH ?? Number.NaN)}: ${correctionWords(carryOver)}`,
    );
  }
  if (effluent !== undefined) {
    const { litres, pH, temperatureC, mayGo, reasons, correction } = effluent;
    const state = `Waste water: ${figures(litres)} L at pH ${pH.toFixed(1)} and ${temperatureC.toFixed(0)} °C`;
    lines.push(
      mayGo
        ? `${state} is within the limits given. The local authority’s permit comes first.`
        : `${state} may not go to the sewer: ${reasons.map((reason) => reasonWords[reason]).join('; ')}.`,
    );
    if (correction !== null)
      lines.push(`${correctionWords(correction)} Neutralise only as the local authority allows.`);
  }
  if (hardness !== undefined) {
    lines.push(
      `The hardness (${figures(hardness.hardnessMgPerLCaCO3)} mg/L CaCO₃) uses up ${mass(hardness.grams)} of ${scenario.hardness?.agent} before any is left to work.`,
    );
  }
  if (surfactant !== undefined) {
    lines.push(
      'gPerL' in surfactant
        ? `Detergent concentrate: ${range(surfactant.grams)} g, which makes ${range(surfactant.gPerL, 1)} g/L. The supplier’s sheet comes first.`
        : `Detergent: ${mass(surfactant.grams)} of the product (${masses(surfactant.interval)}).`,
    );
  }
  if (rinse !== undefined) {
    lines.push(
      `Rinsing to ${figures((scenario.rinse?.end ?? 0) * 100)} % of the bath, ${scenario.rinse?.prices === undefined ? 'least water' : 'cheapest'} first:`,
      ...rinse.map(({ way, fills, litres, minutes, cost }) => {
        const price = cost === null ? '' : `, costs ${range(cost, 2)}`;
        return `  ${wayWords[way](fills ?? 1)}: ${litres.toFixed(0)} L, ${range(minutes)} min${price}`;
      }),
    );
  }
  if (peroxide !== undefined)
    lines.push(
      `The peroxide is ${figures(peroxide.volumes)} volumes. On a rug at most 3 % (10 volumes), never warm.`,
    );
  return lines;
}

/** An answer as a washer reads it: what to weigh, what pH to expect, what to beware of. */
export function mixText(answer: MixAnswer, scenario: MixScenario): string {
  const { pH, phInterval, bufferCapacityMolPerLPerPh, assumed, warnings, notes } = answer;
  const [least, most] = phInterval;
  const firm = bufferCapacityMolPerLPerPh * 1000;
  const lines = [
    ...warnings.map(({ gas, level }) =>
      level === 'blocked'
        ? `STOP. This bath gives off ${gas}: never mix it.`
        : `Ventilate, and wear the gas warner: ${gas} can be smelt from this bath.`,
    ),
    ...doseLines(answer, scenario),
    `Expect pH ${pH.toFixed(1)} (${least.toFixed(1)} to ${most.toFixed(1)}) at ${figures(scenario.temperatureC)} °C. This is computed: measure the pH before use.`,
    firm < 0.5
      ? `Its pH is easily moved (${figures(firm)} mmol/L for a whole unit): a pinch more or less shows.`
      : `It holds its pH: a whole unit takes ${figures(firm)} mmol/L more of acid or base.`,
    ...(assumed === null
      ? []
      : [
          `The water’s alkalinity is not given: ${range(assumed.alkalinityAssumed)} mg/L CaCO₃ is assumed. It stands on the water supplier’s sheet and narrows all of this.`,
        ]),
    ...notes.map(noteWords),
    ...partLines(answer.parts, scenario),
    'Gloves and goggles; acid into water, never water into acid. The supplier’s safety data sheet and local discharge rules come first.',
  ];
  return lines.join('\n');
}
