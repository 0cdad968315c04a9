import type {
  BlotNote,
  BlotProblem,
  BlotUnclear,
  Change,
  ColourProblem,
  CompareNote,
  Comparison,
} from '../core/colour/index.ts';
import type { WordsFor } from './words.ts';

const unclearWords: Readonly<Partial<Record<BlotUnclear, string>>> = {
  'several-blots': 'More than one stain lies in the card’s window.',
  'no-clean-cloth': 'Hardly any clean white cloth can be told in the card’s window.',
  'blot-too-small': 'The stain has no level part large enough to be measured.',
};

const lightWords: Readonly<Partial<Record<BlotProblem['code'], string>>> = {
  'blot-clipped': 'its paper is too bright or too dark',
  'blot-light-uneven': 'a shadow or uneven light lies on it',
  'blot-card-too-small': 'it is too small in the picture',
  'blot-card-cut-off': 'it is not wholly in the picture, or fewer than three of its loose pieces are',
};

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
  'blot-too-noisy': ({ sigma, most }) => ({
    happened: `The measured places scatter by ${sigma.toFixed(1)} ΔE; at most ${most} is taken.`,
    matters: 'With so much scatter clean cloth could be taken for stained, or a stain for clean cloth.',
    now: 'Photograph from nearer, in more light, with the cloth lying flat.',
  }),
  'blot-card-too-small': ({ mmPerPx }) => ({
    happened: `The card is too small in the picture: ${mmPerPx.toFixed(2)} mm to a pixel.`,
    matters: 'The light is told from the paper around the card’s window, which must be some pixels wide.',
    now: 'Photograph from nearer, so that the card fills at least a third of the picture.',
  }),
  'blot-card-cut-off': ({ seenPercent }) => ({
    happened: `Only ${seenPercent} % of the paper around the card’s window is in the picture.`,
    matters: 'The light over the cloth is told from the paper on all its sides.',
    now: 'Photograph again with the whole card in the picture.',
  }),
  'blot-not-clear': ({ why }) => ({
    happened: unclearWords[why] ?? 'Blot and clean cloth cannot be told apart in the card’s window.',
    matters: 'A grade of the wrong place would be worse than none.',
    now: 'Show the two places yourself: clean cloth as the control and the blot as the sample (--control and --sample on the command line).',
  }),
  'blot-outside-window': ({ name }) => ({
    happened: `The ${name} place runs over the edge of the card’s window.`,
    matters: 'Only cloth inside the window is measured, with clean cloth around the blot.',
    now: 'Lay the card so that the whole blot and some clean cloth lie in its window, and photograph again.',
  }),
  'blot-other-card': ({ before, after }) => ({
    happened: `The pictures show two cards: ${before} before, ${after} after.`,
    matters:
      'Cards are printed differently; between two of them a difference is uncertain by 5 ΔE, more than most stains.',
    now: 'Photograph both with one card, or grade the picture after by itself.',
  }),
  'blot-before-stained': ({ afterClean }) => ({
    happened: afterClean
      ? 'The picture before shows a stain and the picture after none.'
      : 'The picture before the test shows a stain already.',
    matters: 'The cloth must be clean before the test.',
    now: afterClean
      ? 'The pictures are likely swapped: give the clean cloth first.'
      : 'Repeat the blot with fresh cloth, or grade the picture after by itself.',
  }),
  'blot-control-moved': ({ deltaE, most }) => ({
    happened: `The clean cloth differs by ΔE ${deltaE.toFixed(1)} between the two pictures; at most ${most} is taken.`,
    matters:
      'Then the light was not corrected, or the clean cloth took something up too, and the grade would be wrong.',
    now: 'Photograph both in the same light and place; if the control stays off, make the blot again.',
  }),
  'compare-card-light': ({ picture, because }) => ({
    happened: `In the picture ${picture} the light cannot be told from the card: ${lightWords[because] ?? 'it cannot be read well enough'}.`,
    matters: 'Without the card’s paper and greys a change of the light looks like a change of the rug.',
    now: 'Photograph again in even light, with the card wholly in the picture and as large as it may be; for a whole rug lay the loose pieces beside its corners.',
  }),
  'compare-corners': () => ({
    happened: 'How the two pictures lie on each other cannot be told.',
    matters: 'Only the same places of the rug can be compared.',
    now: 'Tap the rug’s four corners on both pictures, in the same order.',
  }),
  'compare-other-rug': ({ likeness, from }) => ({
    happened: `The patterns of the two pictures do not fit on each other (likeness ${likeness.toFixed(2)} of 1).`,
    matters: 'They may show two rugs, or two sides of one.',
    now:
      from === 'corners'
        ? 'Check that both pictures show the same rug and side, and that the corners were tapped in the same order.'
        : 'Check that both pictures show the same rug, and tap its four corners on both: the card has likely moved.',
  }),
  'compare-control-moved': ({ deltaE, most }) => ({
    happened: `The card’s own greys differ by ΔE ${deltaE.toFixed(1)} between the pictures; at most ${most} is taken.`,
    matters: 'The card cannot have changed, so the light was not corrected and every figure would be wrong.',
    now: 'Photograph again in the same even light, without shadows or shine on the card.',
  }),
} satisfies WordsFor<ColourProblem>;

/** What is printed for the kind of grade: the short blot is no substitute for the four hours of the standard. */
export const blotLabel = 'blot, graded with the ISO 105-A04 formula';

export const blotNoteWords = {
  'relative-colour':
    'Colours are relative to this photograph. A phone’s contrast may change the difference; that is allowed for in the interval.',
  'control-is-the-white':
    'No white paper was marked, so the control was taken for the white: a control already stained cannot be seen.',
  'light-level-only':
    'The light was taken as even: mark three or more white areas around the cloth to have it corrected.',
  'no-blot-seen':
    'No stain was seen: the middle of the window was compared with its corners. A stain that fills the whole window evenly cannot be seen.',
  'one-picture': 'Graded from one picture: stains the cloth had before the test count as dye.',
  'uneven-blot': 'The blot is uneven: grade its strongest place by itself too.',
} satisfies Readonly<Record<BlotNote, string>>;

export const compareNoteWords = {
  'other-card': 'The pictures show two cards; every colour is uncertain by 5 ΔE more.',
  'plain-not-verified': 'The rug has too little pattern to check that both pictures show the same places.',
  'maybe-swapped':
    'The second picture shows a darker rug. Files do not say when they were taken for certain: check that before and after are not swapped.',
  'light-known-at-card':
    'The light is known where the card lies; for places far from it a doubt is allowed for.',
} satisfies Readonly<Record<CompareNote, string>>;

const changed = ({ by, half95 }: Change): string =>
  `${Math.abs(by).toFixed(0)} ± ${Math.max(1, Math.ceil(half95))}`;

/** What a client may be told of a comparison, in one sentence. */
export function compareSentence({
  lightness,
  chroma,
  hueMoved,
  colours,
}: Pick<Comparison, 'lightness' | 'chroma' | 'hueMoved' | 'colours'>): string {
  const isMoved = (change: Change): boolean => Math.abs(change.by) > change.half95;
  const light = isMoved(lightness)
    ? `lightness ${lightness.by > 0 ? 'up' : 'down'} ${changed(lightness)}`
    : 'lightness unchanged within measurement';
  const clear = isMoved(chroma) ? `, colourfulness ${chroma.by > 0 ? 'up' : 'down'} ${changed(chroma)}` : '';
  const hues =
    colours.length === 0
      ? 'no colour was compared by itself'
      : hueMoved.length === 0
        ? 'hues unchanged within measurement'
        : `the hue moved in ${hueMoved.join(', ')}, which soil alone may not explain`;
  const begins =
    isMoved(lightness) && lightness.by > 0
      ? hueMoved.length === 0
        ? 'Lighter and cleaner'
        : 'Lighter'
      : isMoved(lightness)
        ? 'Darker'
        : 'Much as before';
  return `${begins}: ${light}${clear}; ${hues}.`;
}
