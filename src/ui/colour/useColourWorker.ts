import { useCallback, useEffect, useRef, useState } from 'react';
import type { ColourAsked, ColourTold, OpenedPicture, Slot } from './colourTalk.ts';

/** A picture with the address it is shown under. */
export interface ShownPicture extends OpenedPicture {
  readonly url: string;
}

type Slots<Thing> = Readonly<Partial<Record<Slot, Thing>>>;

/** One worker for a page's pictures: opened once, measured as often as asked; nothing leaves this device. */
export function useColourWorker(onTold: (told: ColourTold) => void) {
  const [pictures, setPictures] = useState<Slots<ShownPicture | 'opening' | 'not-opened'>>({});
  const worker = useRef<Worker | null>(null);
  const urls = useRef<string[]>([]);
  const listener = useRef(onTold);
  listener.current = onTold;

  const ask = useCallback((asked: ColourAsked) => {
    if (worker.current === null) {
      const made = new Worker(new URL('./colourWorker.ts', import.meta.url), { type: 'module' });
      made.addEventListener('message', ({ data }: MessageEvent<ColourTold>) => {
        if (data.kind === 'opened') {
          const url = URL.createObjectURL(data.shown);
          urls.current.push(url);
          setPictures((known) => ({ ...known, [data.slot]: { ...data, url } }));
        } else if (data.kind === 'not-opened')
          setPictures((known) => ({ ...known, [data.slot]: 'not-opened' }));
        listener.current(data);
      });
      made.addEventListener('error', () => listener.current({ kind: 'not-measured' }));
      worker.current = made;
    }
    if (asked.kind === 'open') setPictures((known) => ({ ...known, [asked.slot]: 'opening' }));
    worker.current.postMessage(asked);
  }, []);

  useEffect(
    () => () => {
      worker.current?.terminate();
      worker.current = null;
      for (const url of urls.current) URL.revokeObjectURL(url);
    },
    [],
  );

  return { pictures, ask };
}
