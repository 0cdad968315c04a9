import { useEffect, useState } from 'react';
import { serverNow } from '../call/serverClock.ts';

/** The server's time [ms], kept current. Two tablets whose clocks differ still show one timer. */
export function useNow(everyMs = 1000): number {
  const [now, setNow] = useState(serverNow);
  useEffect(() => {
    const timer = setInterval(() => setNow(serverNow()), everyMs);
    return () => clearInterval(timer);
  }, [everyMs]);
  return now;
}
