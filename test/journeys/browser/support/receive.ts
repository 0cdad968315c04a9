import type { Hand } from './hand.ts';

/** Goes on to the next step of the receipt once this one is complete. */
export async function next(hand: Hand, heading: string): Promise<void> {
  await hand.press('Next');
  await hand.heading(heading);
}

/** A client nobody knows yet. */
export async function newClient(hand: Hand, name: string): Promise<void> {
  await hand.heading('Client');
  await hand.press('New client');
  await hand.fill('Name', name);
  await hand.fill('Phone', '+00 555 0142');
}

/** Three lengths and three widths [cm]. */
export async function measure(hand: Hand, lengthCm: number, widthCm: number, now = ''): Promise<void> {
  for (const place of ['left', 'middle', 'right'])
    await hand.fill(`Length${now}, ${place}`, String(lengthCm));
  for (const place of ['at the start', 'in the middle', 'at the far end'])
    await hand.fill(`Width${now}, ${place}`, String(widthCm));
}

/** The signature of a client, drawn with a finger. */
export async function sign(hand: Hand): Promise<void> {
  await hand.draw(hand.scope.getByRole('img', { name: /^Empty space to sign in/ }), [
    [0.15, 0.7],
    [0.25, 0.3],
    [0.35, 0.75],
    [0.5, 0.4],
    [0.7, 0.65],
  ]);
  await hand.scope.getByRole('img', { name: 'Signed with 1 strokes' }).waitFor();
}
