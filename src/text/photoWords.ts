import type { PhotoProblem } from '../dossier/photoProblem.ts';
import type { WordsFor } from './words.ts';

const matters = 'Only a picture that can be opened again years from now is evidence, so it was not kept.';

export const photoWords = {
  'photograph-too-large': ({ megabytes, most }) => ({
    happened: `The photograph has ${megabytes.toFixed(1)} MB; at most ${most} MB are taken.`,
    matters: 'Such files slow every tablet down without showing more of the rug.',
    now: 'Set the camera to a smaller picture, or to JPEG instead of raw, and take it again.',
  }),
  'photograph-too-many-pixels': ({ megapixels, most }) => ({
    happened: `The picture has ${megapixels.toFixed(1)} megapixels; at most ${most} are taken.`,
    matters: 'Opening it would use up the memory that the whole workshop works on.',
    now: 'Set the camera to a smaller picture and take it again.',
  }),
  'photograph-not-a-picture': ({ claimed, found }) => ({
    happened: `The file says it is ${claimed === '' ? 'a photograph' : claimed}, but it is ${found}.`,
    matters,
    now: 'Choose a photograph as JPEG, PNG, WebP or HEIC, under the ending that belongs to it.',
  }),
  'photograph-damaged': ({ reason }) => ({
    happened: `The picture cannot be opened whole: ${reason}.`,
    matters,
    now: 'Send it again, or take it again if it is cut off on the camera too.',
  }),
} satisfies WordsFor<PhotoProblem>;
