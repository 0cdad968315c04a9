import { type CardReading, countOnCard, withMeasuredBar } from '../../core/card/index.ts';
import { countWeave, type Picture, type WeaveOptions } from '../../core/weave/index.ts';
import { done } from '../../units/index.ts';
import { type CardKnown, cardInPicture } from '../card/cardInPicture.ts';
import { uprightPicture } from '../card/uprightPicture.ts';
import type { WeaveAsked, WeaveCounted, WeaveTold } from './weaveTalk.ts';

interface Opened {
  readonly picture: Picture;
  readonly reading: CardReading | null;
}

let opened: Opened | null = null;
let lastOptions: WeaveOptions = {};
const tell = (told: WeaveTold) => postMessage(told);

async function open(file: Blob, known: CardKnown) {
  const { picture, canvas } = await uprightPicture(file);
  const { widthPx, heightPx, channels, data, reducedBy } = picture;
  const card = await cardInPicture(picture, known);
  opened = {
    picture: { width: widthPx, height: heightPx, channels, data },
    reading: card.ok ? card.value : null,
  };
  // What is shown is what was counted, so that strokes and taps lie where they should.
  const shown = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.92 });
  tell({ kind: 'opened', shown, widthPx, heightPx, reducedBy, card });
}

/** In the card's window where one lies in the picture, else in the whole of it. */
function count({ picture, reading }: Opened, options: WeaveOptions): WeaveCounted {
  if (reading !== null) {
    const counted = countOnCard(picture, reading, options);
    return counted.ok ? done({ count: counted.value.count, cardScale: counted.value.scale }) : counted;
  }
  const counted = countWeave(picture, options);
  return counted.ok ? done({ count: counted.value, cardScale: null }) : counted;
}

/** The same picture, its card put right by the measured bar, and what was counted in it counted again. */
function takeBar({ picture, reading }: Opened, barMm: number) {
  if (reading === null || reading.measured) return;
  const card = withMeasuredBar(reading, barMm);
  if (!card.ok) return;
  opened = { picture, reading: card.value };
  tell({ kind: 'card', card });
  tell({ kind: 'counted', counted: count(opened, lastOptions) });
}

addEventListener('message', async ({ data }: MessageEvent<WeaveAsked>) => {
  try {
    if (data.kind === 'open') await open(data.file, data.known);
    else if (opened === null) return;
    else if (data.kind === 'bar') takeBar(opened, data.barMm);
    else {
      lastOptions = data.options;
      tell({ kind: 'counted', counted: count(opened, data.options) });
    }
  } catch {
    tell({ kind: data.kind === 'open' ? 'not-opened' : 'not-counted' });
  }
});
