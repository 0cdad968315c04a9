import type { NextLook } from '../dossier/index.ts';

/** What to do at the next look, where no single reading would narrow the forecast much. */
export const nextLookWords = {
  look: 'Look at it: weigh it, or feel it and tape a pocket',
  prove: 'Prove it by the dry standard below',
} satisfies { readonly [What in NextLook['what']]: string };

/** Why this look. */
export const nextLookReasons = {
  look: 'no reading would narrow the forecast much; looked at it stays true',
  prove: 'the forecast calls it dry, and a forecast is no proof',
} satisfies { readonly [What in NextLook['what']]: string };
