import { type BlotPlaces, type CardPicture, readBlotPair, readCardBlot } from '../../core/colour/index.ts';
import { type CardKnown, cardInPicture } from '../card/cardInPicture.ts';
import { uprightPicture } from '../card/uprightPicture.ts';
import type { ColourAsked, ColourTold, Slot } from './colourTalk.ts';

const opened: { [S in Slot]?: CardPicture } = {};
/** Latest file asked for: one that took longer to open must not take the place of a later one. */
const latest: { [S in Slot]?: Blob } = {};
const tell = (told: ColourTold) => postMessage(told);

async function open(slot: Slot, file: Blob, known: CardKnown) {
  latest[slot] = file;
  delete opened[slot];
  const { picture, canvas } = await uprightPicture(file);
  const card = await cardInPicture(picture, known);
  const { widthPx, heightPx } = picture;
  // What is shown is what is measured, so that outlines lie where they should.
  const shown = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.9 });
  if (latest[slot] !== file) return;
  if (card.ok) opened[slot] = { picture, card: card.value };
  tell({ kind: 'opened', slot, shown, widthPx, heightPx, card });
}

function blot(run: number, isPair: boolean, places: BlotPlaces | null) {
  const { before, after } = opened;
  if (after === undefined) return;
  if (isPair && before === undefined) return;
  const read =
    isPair && before !== undefined
      ? readBlotPair(before, after, places ?? undefined)
      : readCardBlot(after.picture, after.card, places ?? undefined);
  tell({ kind: 'blot', run, blot: read });
}

addEventListener('message', async ({ data }: MessageEvent<ColourAsked>) => {
  try {
    if (data.kind === 'open') await open(data.slot, data.file, data.known);
    else blot(data.run, data.isPair, data.places);
  } catch {
    tell(data.kind === 'open' ? { kind: 'not-opened', slot: data.slot } : { kind: 'not-measured' });
  }
});
