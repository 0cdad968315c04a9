import type { BuiltServer } from '../../../support/builtServer.ts';
import type { Hand } from './hand.ts';

export const ownersName = 'Mirela Ostrand';
export const ownersPassphrase = 'madder indigo weld walnut';

/** The first start: the one-time code from the terminal makes the owner's account. */
export async function setUpHouse(hand: Hand, house: BuiltServer): Promise<void> {
  await hand.heading('Open your workshop');
  await hand.fill('One-time code', house.setUpCode ?? '');
  await hand.fill('Name of the workshop', 'Fern Lane Rugs');
  await hand.fill('Your name', ownersName);
  const [first, again] = [
    hand.page.getByLabel('Passphrase').first(),
    hand.page.getByLabel('Passphrase once more'),
  ];
  await first.fill(ownersPassphrase);
  await again.fill(ownersPassphrase);
  await hand.press('Open the house');
  await hand.see('No rug is in the house.');
}

export async function signIn(
  hand: Hand,
  name = ownersName,
  passphrase: string | undefined = ownersPassphrase,
): Promise<void> {
  await hand.fill('Your name', name);
  await hand.page.getByLabel('Passphrase').fill(passphrase);
  await hand.press('Sign in');
}

export async function signOut(hand: Hand): Promise<void> {
  await hand.press(/switch person, sign out$/);
  await hand.press('Sign out');
  await hand.page.getByLabel('Passphrase').waitFor();
}
