import { useCallback, useEffect, useRef, useState } from 'react';
import type { WeaveOptions } from '../../core/weave/index.ts';
import type { OpenedPicture, WeaveAsked, WeaveCounted, WeaveTold } from './weaveTalk.ts';

export interface WeavePicture extends OpenedPicture {
  readonly url: string;
}

interface Worked {
  readonly doing: 'opening' | 'counting' | null;
  readonly failed: 'not-opened' | 'not-counted' | null;
  readonly picture: WeavePicture | null;
  readonly counted: WeaveCounted | null;
}

const nothing: Worked = { doing: null, failed: null, picture: null, counted: null };

/** One photograph in one worker: opened once, counted as often as asked; nothing leaves this device. */
export function useWeaveWorker() {
  const [worked, setWorked] = useState<Worked>(nothing);
  const worker = useRef<Worker | null>(null);
  const url = useRef<string | null>(null);

  const stop = useCallback(() => {
    worker.current?.terminate();
    worker.current = null;
    if (url.current !== null) URL.revokeObjectURL(url.current);
    url.current = null;
  }, []);
  useEffect(() => stop, [stop]);

  const count = useCallback((options: WeaveOptions) => {
    setWorked((before) => ({ ...before, doing: 'counting', failed: null, counted: null }));
    worker.current?.postMessage({ kind: 'count', options } satisfies WeaveAsked);
  }, []);

  const open = useCallback(
    (file: Blob) => {
      stop();
      setWorked({ ...nothing, doing: 'opening' });
      const opened = new Worker(new URL('./weaveWorker.ts', import.meta.url), { type: 'module' });
      worker.current = opened;
      const fail = (failed: 'not-opened' | 'not-counted') =>
        setWorked((before) => ({ ...before, doing: null, failed }));
      opened.addEventListener('error', () => fail('not-counted'));
      opened.addEventListener('message', ({ data }: MessageEvent<WeaveTold>) => {
        if (worker.current !== opened) return;
        if (data.kind === 'opened') {
          url.current = URL.createObjectURL(data.shown);
          setWorked({ ...nothing, picture: { ...data, url: url.current } });
          count({});
        } else if (data.kind === 'counted')
          setWorked((before) => ({ ...before, doing: null, counted: data.counted }));
        else fail(data.kind);
      });
      opened.postMessage({ kind: 'open', file, known: {} } satisfies WeaveAsked);
    },
    [stop, count],
  );

  return { ...worked, open, count };
}
