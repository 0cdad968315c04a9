import type { Binding } from '../core/drying/index.ts';

/** What holds drying up in a room, and what would help. */
export const bindingWords = {
  none: 'nothing that hangs here is wet',
  extraction:
    'the room’s air is too damp: another machine, drier air from outside, or fewer rugs would help most',
  warmth: 'the room is cool: warmth would help most',
  'air-along-the-face': 'water is free at the face: more air along it would help most',
  pile: 'the last water comes slowly out of the pile: turning and time help, more air hardly',
} satisfies { readonly [Code in Binding]: string };
