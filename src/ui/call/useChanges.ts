import { type QueryClient, useQueryClient } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { call } from './call.ts';
import type { HouseState } from './wire.ts';

/** How this screen stands to the server: told of every change, cut off, or no longer signed in. */
export type Line = 'up' | 'down' | 'signed out';

const reopenAfterMs = 4000;

/** Asks anew for what a moved stream shows. */
function refresh(cache: QueryClient, streams: readonly string[]) {
  for (const stream of streams) {
    const [kind = '', name = ''] = stream.split('/');
    const key = kind === 'workshop' ? ['state'] : name === '' ? [kind] : [kind, name];
    cache.invalidateQueries({ queryKey: key });
  }
  for (const list of ['rows', 'today', 'stops', 'clients', 'rooms'])
    cache.invalidateQueries({ queryKey: [list] });
}

const streamsIn = (data: unknown): readonly string[] => {
  try {
    return (JSON.parse(String(data)) as { readonly streams?: readonly string[] }).streams ?? [];
  } catch {
    return [];
  }
};

/** Follows what others record, so that every open screen stays current. */
export function useChanges(): Line {
  const cache = useQueryClient();
  const [line, setLine] = useState<Line>('up');
  useEffect(() => {
    let source: EventSource | null = null;
    let reopening: ReturnType<typeof setTimeout> | undefined;
    let wasLost = false;
    const open = () => {
      source?.close();
      source = new EventSource('/api/changes');
      source.onopen = () => {
        setLine('up');
        // What moved while the line was down was not told.
        if (wasLost) cache.invalidateQueries();
        wasLost = false;
      };
      source.onerror = lost;
      source.addEventListener('moved', ({ data }) => refresh(cache, streamsIn(data)));
    };
    const lost = async () => {
      wasLost = true;
      const state = await call<HouseState>('/api/state', { asksToSignIn: false });
      setLine(state.ok && state.value.signedIn === null ? 'signed out' : state.ok ? 'up' : 'down');
      // The browser tries again by itself unless the server refused it.
      if (source?.readyState === EventSource.CLOSED) {
        clearTimeout(reopening);
        reopening = setTimeout(open, reopenAfterMs);
      }
    };
    const cutOff = () => setLine('down');
    open();
    addEventListener('offline', cutOff);
    addEventListener('online', open);
    return () => {
      source?.close();
      clearTimeout(reopening);
      removeEventListener('offline', cutOff);
      removeEventListener('online', open);
    };
  }, [cache]);
  return line;
}
