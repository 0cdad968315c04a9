import { useQuery } from '@tanstack/react-query';
import { useEffect, useRef } from 'react';
import { Link, useLocation } from 'wouter';
import type { StopsAnswer } from '../../contract/index.ts';
import { asked, call } from '../call/index.ts';
import { ringBell } from '../kit/bell.ts';
import { Tag } from '../kit/index.ts';

/** A stop by the clock is recorded by nobody, so it is asked for [ms]. */
const anewMs = 30_000;

/** Stops of all rugs, on every page but the rug's own: whoever is nearest leads to its rescue card. */
export function StopBanner() {
  const [path] = useLocation();
  const { data } = useQuery({
    queryKey: ['stops'],
    queryFn: () => asked(call<StopsAnswer>('/api/stops', { asksToSignIn: false })),
    refetchInterval: anewMs,
  });
  // Today lists them first, and the rug's own page shows the card itself.
  const elsewhere = path === '/' ? [] : (data?.stops ?? []).filter(({ rug }) => path !== `/rugs/${rug}`);
  const known = useRef<readonly string[] | null>(null);
  useEffect(() => {
    if (data === undefined) return;
    const others = data.stops.filter(({ rug }) => path !== `/rugs/${rug}`);
    const before = known.current;
    known.current = data.stops.map(({ rug, stop }) => `${rug}/${stop}`);
    // The rug's own page rings by itself.
    if (before !== null && others.some(({ rug, stop }) => !before.includes(`${rug}/${stop}`))) ringBell();
  }, [data, path]);
  const [first, ...others] = elsewhere;
  if (first === undefined) return null;
  return (
    <div className="stops" role="alert">
      <span>
        <b>▲ Stopped:</b> {first.tag === null ? first.title : <Tag tag={first.tag} />} {first.condition}
      </span>
      <Link className="btn stop" href={`/rugs/${first.rug}?at=wash`}>
        Open the rescue card
      </Link>
      {others.length > 0 && <Link href="/">{others.length} more on Today</Link>}
    </div>
  );
}
