import type { DoseProblem, HardnessProblem } from '../core/chemistry/index.ts';
import { quantityWords } from './quantityWords.ts';
import type { WordsFor } from './words.ts';

export const chemistryWords = {
  'out-of-range': quantityWords['out-of-range'],
  'agent-unknown': ({ agent, near, known }) => ({
    happened: `“${agent}” is no agent this instrument knows.`,
    matters: 'A pH cannot be computed for something whose composition is unknown.',
    now:
      near.length > 0
        ? `Did you mean ${near.join('; ')}? Otherwise give the chemical name that stands on its label or safety data sheet; for a product of several chemicals, each with its strength.`
        : `Give the chemical name that stands on its label or safety data sheet. Known are: ${known.join('; ')}.`,
  }),
  'agent-strength-missing': ({ agent, means }) => ({
    happened: `“${agent}” is sold in many strengths, and none is given.`,
    matters: 'A guess at the strength would be a guess at the dose.',
    now: `Give the strength from its label as a share by mass (0.05 for 5 % of ${means}).`,
  }),
  'amount-missing': ({ agent }) => ({
    happened: `No amount is given for ${agent}.`,
    matters: 'Every agent counts in the balance.',
    now: 'Give grams, or millilitres together with the density in g/mL at that strength.',
  }),
  'ionic-strength-too-high': ({ ionicStrengthMolPerL, most }) => ({
    happened: `The bath is as salty as ${ionicStrengthMolPerL.toFixed(2)} mol/L; the activity correction holds to ${most} mol/L.`,
    matters: 'Beyond that a computed pH looks like a measurement and is none.',
    now: 'Dilute it in the plan, or measure the pH of the real bath.',
  }),
  'dose-range-open': ({ agent, targetPh, alkalinityMgPerLCaCO3 }) => ({
    happened: `If the water’s alkalinity is ${alkalinityMgPerLCaCO3.toFixed(0)} mg/L CaCO₃, which it may be, no dose of ${agent} to pH ${targetPh} can be computed: the bath is too salty to reckon, or the agent does not bring it there.`,
    matters: 'A range with one end guessed would look narrower than it is.',
    now: 'Measure the water’s alkalinity to know it better, put less into the bath before, or choose another target.',
  }),
  'target-out-of-reach': ({ agent, targetPh, phNow, phAtMost }) => ({
    happened: `${agent} cannot bring this bath from pH ${phNow.toFixed(2)} to ${targetPh}.`,
    matters: `With any sensible amount it ends near pH ${phAtMost.toFixed(2)}.`,
    now: 'Choose another agent or another target.',
  }),
  'binding-not-fixed': ({ agent, known }) => ({
    happened: `“${agent}” binds no fixed amount of hardness.`,
    matters:
      'How much the water uses up depends on pH and on what else is in the bath; a figure would be a guess.',
    now: `Follow the supplier’s sheet, or soften the water. What can be computed: ${known.join('; ')}.`,
  }),
} satisfies WordsFor<DoseProblem | HardnessProblem>;
