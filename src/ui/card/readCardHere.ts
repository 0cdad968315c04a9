import type { CardKnown } from './cardInPicture.ts';
import type { CardAsked, CardHere } from './cardTalk.ts';

export type { CardKnown } from './cardInPicture.ts';
export type { CardHere } from './cardTalk.ts';
export type { PictureHere } from './uprightPicture.ts';

/**
 * Opens a photograph and reads the weave card in it, in a worker of its own; nothing leaves this device.
 *
 * @param photograph - as taken or chosen
 * @param known - measured bars by serial [mm], and the tag the picture should belong to
 * @returns null where the browser cannot open the file as a picture
 */
export function readCardHere(photograph: Blob, known: CardKnown = {}): Promise<CardHere | null> {
  const worker = new Worker(new URL('./cardWorker.ts', import.meta.url), { type: 'module' });
  return new Promise<CardHere | null>((resolve) => {
    worker.addEventListener('message', ({ data }: MessageEvent<CardHere | null>) => resolve(data));
    worker.addEventListener('error', () => resolve(null));
    worker.postMessage({ photograph, known } satisfies CardAsked);
  }).finally(() => worker.terminate());
}
