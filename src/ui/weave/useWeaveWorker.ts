import { useCallback, useEffect, useRef, useState } from 'react';
import type { WeaveOptions } from '../../core/weave/index.ts';
import type { CardKnown } from '../card/cardInPicture.ts';
import type { CardSeen, OpenedPicture, WeaveAsked, WeaveCounted, WeaveTold } from './weaveTalk.ts';

export interface WeavePicture extends OpenedPicture {
  readonly url: string;
}

interface Worked {
  readonly doing: 'opening' | 'counting' | null;
  readonly failed: 'not-opened' | 'not-counted' | null;
  readonly picture: WeavePicture | null;
  readonly card: CardSeen | null;
  readonly counted: WeaveCounted | null;
}

const nothing: Worked = { doing: null, failed: null, picture: null, card: null, counted: null };

/** One photograph in one worker: opened once, counted as often as asked; nothing leaves this device. */
export function useWeaveWorker(file: Blob, known: CardKnown) {
  const [worked, setWorked] = useState<Worked>({ ...nothing, doing: 'opening' });
  const worker = useRef<Worker | null>(null);
  // What is known of cards when the photograph is opened; a bar measured later is told by `takeBar`.
  const knownThen = useRef(known);

  const count = useCallback((options: WeaveOptions) => {
    setWorked((before) => ({ ...before, doing: 'counting', failed: null, counted: null }));
    worker.current?.postMessage({ kind: 'count', options } satisfies WeaveAsked);
  }, []);
  const takeBar = useCallback((barMm: number) => {
    worker.current?.postMessage({ kind: 'bar', barMm } satisfies WeaveAsked);
  }, []);

  useEffect(() => {
    const opened = new Worker(new URL('./weaveWorker.ts', import.meta.url), { type: 'module' });
    let url: string | null = null;
    worker.current = opened;
    setWorked({ ...nothing, doing: 'opening' });
    const fail = (failed: 'not-opened' | 'not-counted') =>
      setWorked((before) => ({ ...before, doing: null, failed }));
    opened.addEventListener('error', () => fail('not-counted'));
    opened.addEventListener('message', ({ data }: MessageEvent<WeaveTold>) => {
      if (data.kind === 'opened') {
        const { card, ...picture } = data;
        url = URL.createObjectURL(data.shown);
        setWorked({ ...nothing, picture: { ...picture, url }, card });
        // A count filed under the wrong rug would be worse than none.
        if (card.ok || card.problem.code !== 'card-other-tag') count({});
      } else if (data.kind === 'card')
        // The count that follows is the first with this scale; the one before must not stand beside it.
        setWorked((before) => ({ ...before, doing: 'counting', counted: null, card: data.card }));
      else if (data.kind === 'counted')
        setWorked((before) => ({ ...before, doing: null, counted: data.counted }));
      else fail(data.kind);
    });
    opened.postMessage({ kind: 'open', file, known: knownThen.current } satisfies WeaveAsked);
    return () => {
      opened.terminate();
      worker.current = null;
      if (url !== null) URL.revokeObjectURL(url);
    };
  }, [file, count]);

  return { ...worked, count, takeBar };
}
