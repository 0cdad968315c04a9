import {
  type BlotPlaces,
  type CardPicture,
  type ColourPicture,
  comparePictures,
  drawDifferenceMap,
  readBlotPair,
  readCardBlot,
} from '../../core/colour/index.ts';
import { done } from '../../units/index.ts';
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

/** A picture of three bytes a pixel as a file. */
function asFile({ widthPx, heightPx, data }: ColourPicture, type: 'image/jpeg' | 'image/png'): Promise<Blob> {
  const rgba = new Uint8ClampedArray(widthPx * heightPx * 4);
  for (let from = 0, to = 0; from < data.length; from += 3, to += 4) {
    rgba[to] = data[from] ?? 0;
    rgba[to + 1] = data[from + 1] ?? 0;
    rgba[to + 2] = data[from + 2] ?? 0;
    rgba[to + 3] = 255;
  }
  const canvas = new OffscreenCanvas(widthPx, heightPx);
  canvas.getContext('2d')?.putImageData(new ImageData(rgba, widthPx, heightPx), 0, 0);
  return canvas.convertToBlob({ type, quality: 0.9 });
}

async function compare({ run, corners, colours }: Extract<ColourAsked, { readonly kind: 'compare' }>) {
  const { before, after } = opened;
  if (before === undefined || after === undefined) return;
  const side = (slot: Slot, picture: CardPicture) => ({
    ...picture,
    ...(corners === null ? {} : { corners: corners[slot] }),
  });
  const made = comparePictures(side('before', before), side('after', after), colours);
  if (!made.ok) {
    tell({ kind: 'compared', run, compared: made });
    return;
  }
  const { before: was, after: is, map, ...figures } = made.value;
  const shown = {
    before: await asFile(was, 'image/jpeg'),
    after: await asFile(is, 'image/jpeg'),
    map: await asFile(drawDifferenceMap(map), 'image/png'),
  };
  tell({ kind: 'compared', run, compared: done({ ...figures, shown }) });
}

addEventListener('message', async ({ data }: MessageEvent<ColourAsked>) => {
  try {
    if (data.kind === 'open') await open(data.slot, data.file, data.known);
    else if (data.kind === 'blot') blot(data.run, data.isPair, data.places);
    else await compare(data);
  } catch {
    tell(data.kind === 'open' ? { kind: 'not-opened', slot: data.slot } : { kind: 'not-measured' });
  }
});
