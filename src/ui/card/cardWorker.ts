import { cardInPicture } from './cardInPicture.ts';
import type { CardAsked, CardHere } from './cardTalk.ts';
import { uprightPicture } from './uprightPicture.ts';

addEventListener('message', async ({ data }: MessageEvent<CardAsked>) => {
  try {
    const { picture } = await uprightPicture(data.photograph);
    const here: CardHere = { picture, card: await cardInPicture(picture, data.known) };
    postMessage(here, { transfer: [picture.data.buffer] });
  } catch {
    postMessage(null);
  }
});
