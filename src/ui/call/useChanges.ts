import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useState } from 'react';

/** Follows what others record, so that every open screen stays current. Tells whether the line is up. */
export function useChanges(isWanted: boolean): { readonly isConnected: boolean } {
  const cache = useQueryClient();
  const [isConnected, setConnected] = useState(true);
  useEffect(() => {
    if (!isWanted) return;
    const source = new EventSource('/api/changes');
    let wasLost = false;
    source.onopen = () => {
      setConnected(true);
      // What moved while the line was down was not told.
      if (wasLost) cache.invalidateQueries();
      wasLost = false;
    };
    source.onerror = () => {
      wasLost = true;
      setConnected(false);
    };
    source.addEventListener('moved', ({ data }) => {
      let streams: readonly string[] = [];
      try {
        streams = (JSON.parse(String(data)) as { readonly streams?: readonly string[] }).streams ?? [];
      } catch {
        streams = [];
      }
      for (const stream of streams) {
        const [kind = '', name = ''] = stream.split('/');
        cache.invalidateQueries({ queryKey: kind === 'workshop' ? ['state'] : [kind, name] });
      }
      cache.invalidateQueries({ queryKey: ['rows'] });
      cache.invalidateQueries({ queryKey: ['today'] });
      cache.invalidateQueries({ queryKey: ['clients'] });
    });
    return () => source.close();
  }, [isWanted, cache]);
  return { isConnected };
}
