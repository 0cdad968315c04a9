import type { BlotNote, ColourProblem } from '../core/colour/index.ts';
import type { WordsFor } from './words.ts';

export const colourWords = {
  'blot-area-outside': ({ name, area, width, height }) => ({
    happened: `${area.x},${area.y},${area.width},${area.height} for the ${name} area is not wholly inside the picture of ${width} × ${height} px.`,
    matters: 'Only what was photographed can be graded.',
    now: `Give x, y, width and height in whole pixels inside ${width} × ${height}.`,
  }),
  'blot-area-too-small': ({ name, area, leastSidePx }) => ({
    happened: `${area.width} × ${area.height} px for the ${name} area is too small.`,
    matters: `With fewer than ${leastSidePx} px on a side the noise of the picture cannot be told from dye.`,
    now: `Give at least ${leastSidePx} × ${leastSidePx} px, or photograph the blot from nearer.`,
  }),
  'blot-areas-overlap': ({ one, other }) => ({
    happened: `The ${one} area and the ${other} area overlap.`,
    matters: 'The grade compares places that must have nothing in common.',
    now: 'Move the areas apart: control on clean cloth, sample in the middle of the blot, white on bare paper.',
  }),
  'blot-clipped': ({ name, sharePercent }) => ({
    happened: `In the ${name} area ${sharePercent} % of the pixels are too bright or too dark to be measured.`,
    matters: 'Where a channel is at its end the colour is lost, and a stain would grade better than it is.',
    now: 'Photograph again in even light without flash, a little darker if white looks burnt out, a little lighter if dark.',
  }),
  'blot-area-mixed': ({ name, keptPercent }) => ({
    happened: `Only ${keptPercent} % of the pixels of the ${name} area belong to one colour.`,
    matters: 'A mean over blot and clean cloth together hides part of the stain.',
    now: 'Take a smaller area that lies wholly in one colour, away from edges, folds and print.',
  }),
  'blot-light-uneven': ({ offPercent }) => ({
    happened: `The light on the white areas differs by ${offPercent} % more than can be corrected.`,
    matters: 'A shadow would be graded as dye, or would hide it.',
    now: 'Photograph again in even daylight without your shadow, and mark white paper on both sides of the cloth.',
  }),
  'blot-cloth-not-white': ({ lightness, chroma, balanced }) => ({
    happened: `The control area is not white: lightness ${lightness.toFixed(0)}, colourfulness ${chroma.toFixed(0)}${balanced ? '' : ', before any correction of the light'}.`,
    matters: 'The staining grade holds for white cloth only.',
    now: balanced
      ? 'Repeat the blot with white cotton without brightener, or move the control to clean cloth.'
      : 'Mark white paper with --white, photograph in better light, or move the control to clean white cloth.',
  }),
  'blot-sample-lighter': ({ lighterBy }) => ({
    happened: `The sample area is lighter than the control by ${lighterBy.toFixed(1)} L*.`,
    matters:
      'Dye never makes white cloth lighter: control and sample are likely swapped, or the control is stained.',
    now: 'Check which area is which, and take the control from cloth that touched no dye.',
  }),
} satisfies WordsFor<ColourProblem>;

/** What is printed for the kind of grade: the short blot is no substitute for the four hours of the standard. */
export const blotLabel = 'blot, graded with the ISO 105-A04 formula';

export const blotNoteWords = {
  'relative-colour':
    'Colours are relative to this photograph. A phone’s contrast may change the difference; 10 % is allowed for.',
  'control-is-the-white':
    'No white paper was marked, so the control was taken for the white: a control already stained cannot be seen.',
  'light-level-only':
    'The light was taken as even: mark three or more white areas around the cloth to have it corrected.',
  'uneven-blot': 'The blot is uneven: grade its strongest place by itself too.',
} satisfies Readonly<Record<BlotNote, string>>;
