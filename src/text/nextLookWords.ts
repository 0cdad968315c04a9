import type { NextLook } from '../dossier/index.ts';

/** What to do at the next look. */
export const nextLookWords = {
  weigh: 'Weigh it, and note the room’s air with it',
  pocket: 'Tape a film pocket for 30 to 60 minutes and read its humidity',
  prove: 'Prove it by the dry standard below',
} satisfies { readonly [What in NextLook['what']]: string };

/** Why this look and no other. */
export const nextLookReasons = {
  'starting-water-unknown': 'the water it started with is the widest unknown; one weighing settles it',
  'pace-unknown': 'a second weighing tells how fast this rug dries in this room',
  'narrows-most-near-the-end':
    'the last water leaves slowly; a weighing shortly before the band begins narrows it most',
  'dry-mass-unknown': 'it was not weighed before the water, so its mass tells nothing; the pocket does',
  'dry-by-forecast': 'the forecast calls it dry, and a forecast is no proof',
} satisfies { readonly [Why in NextLook['why']]: string };
