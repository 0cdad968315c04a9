import type {
  DensityProblem,
  NodesPerKnot,
  PlacesProblem,
  WeaveNote,
  WeaveProblem,
} from '../core/weave/index.ts';
import type { WordsFor } from './words.ts';

export const weaveWords = {
  'unknown-notation': ({ given, allowed }) => ({
    happened: `“${given}” is not a way of writing a knot density that is known here.`,
    matters: 'The same number means very different rugs in different notations.',
    now: `Choose one of: ${allowed.join(', ')}.`,
  }),
  'knot-density-not-readable': ({ given, notation, form }) => ({
    happened: `The knot density “${given}” cannot be read as ${notation}.`,
    matters: 'A misread density changes every total made from it.',
    now: `Write ${form}.`,
  }),
  'weave-window-outside': ({ window, width, height }) => ({
    happened: `The window ${window.x},${window.y},${window.width},${window.height} is not wholly inside the picture of ${width} × ${height} px.`,
    matters: 'Only what was photographed can be counted.',
    now: `Give x, y, width and height in whole pixels inside ${width} × ${height}.`,
  }),
  'weave-picture-too-small': ({ width, height, least }) => ({
    happened: `The picture or window has only ${width} × ${height} px.`,
    matters: `With fewer than ${least} px on a side too few knots are shown to count them.`,
    now: 'Take a larger window, or photograph again with 8 to 16 px to a node.',
  }),
  'weave-not-seen': ({ axis }) => ({
    happened: `No steady repeat was found ${axis === 'both' ? 'in the picture' : axis === 'weftwise' ? 'along the wefts' : 'along the warps'}.`,
    matters:
      'A number made from it would be a guess; blur, pile instead of back, or a plain surface look like this.',
    now: 'Photograph the back, flat, sharp, with light from one side, a row of knots level in the picture; or tap the two ends of five to ten knots.',
  }),
  'weave-too-fine': ({ axis, pitchPx, least }) => ({
    happened: `The repeat ${axis === 'weftwise' ? 'along the wefts' : 'along the warps'} is only ${pitchPx.toFixed(1)} px wide.`,
    matters: `Under ${least} px the raster of the camera is easily mistaken for the weave.`,
    now: 'Come closer: 8 to 16 px to a node are best.',
  }),
  'weave-undecided': ({ axis, pitchesPx }) => ({
    happened: `Something repeats ${axis === 'weftwise' ? 'along the wefts' : 'along the warps'}, perhaps every ${pitchesPx.map((pitch) => pitch.toFixed(1)).join(' or ')} px, but not surely enough to be stated.`,
    matters: 'A wrong one makes the count wrong by a factor of two or three.',
    now: 'Tap the two ends of five to ten knots and say how many they are.',
  }),
  'places-not-enough': ({ given, least, most }) => ({
    happened: `${given} ${given === 1 ? 'place was' : 'places were'} counted; ${least} to ${most} make a result.`,
    matters: 'Knotting is uneven: one place can differ from the next by five per cent.',
    now: 'Count at both sides and in the middle; five places are good.',
  }),
  'taps-not-usable': ({ reason }) => ({
    happened: {
      'along-no-axis': 'The two taps lie neither along a row nor along a column of knots.',
      'too-few': 'The taps span fewer than two repeats.',
      'too-close': 'The taps lie closer than three pixels to a repeat.',
      'same-axis-twice': 'Two pairs of taps were given along the same axis.',
    }[reason],
    matters: 'The taps decide the factor of the count, so they must be sure.',
    now: 'Tap the two ends of five to ten knots in one row, or of five to ten rows in one column.',
  }),
} satisfies WordsFor<Exclude<DensityProblem, { code: 'out-of-range' }> | WeaveProblem | PlacesProblem>;

/** What a reader of a count must know. */
export const weaveNoteWords: Readonly<Record<WeaveNote, string>> = {
  'card-not-measured':
    'This card was never measured: its scale is unverified, ±3 %. Measure its 100 mm bar and give the length.',
  'card-tag-not-read':
    'No tag of a card was read in the picture, so nothing shows that it is a picture of the rug asked for.',
  'no-scale': 'No weave card and no scale: repeats are given in pixels, and no density is stated.',
  'nodes-undecided':
    'One or two nodes per knot? Look at the back: level warps show two nodes to a knot, fully depressed warps one. No density is stated until it is said.',
  'check-the-overlay': 'Not sure enough to stand alone: compare the overlay with the knots before using it.',
  'few-pixels': 'Under 6 px to a repeat: a closer photograph would be surer.',
  'other-factor-close':
    'Another reading is close; see the candidates, or tap the two ends of five to ten knots.',
  'one-axis-automatic':
    'The taps decide only the way they lie; the other was counted automatically, and nobody has confirmed it.',
  'not-confirmed': 'Counted automatically; nobody has confirmed it on the overlay.',
};

/** Why so many nodes per knot were taken. */
export const nodesWords: Readonly<Record<NodesPerKnot['why'], string>> = {
  given: 'as given',
  'colour-changes-even': 'colours change only after an even number of columns',
  'colour-changes-mixed': 'colours change after odd and even numbers of columns alike',
  undecided: 'the picture does not tell whether a knot shows one node or two',
};
