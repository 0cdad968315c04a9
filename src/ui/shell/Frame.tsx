import { Suspense, useEffect, useRef, useState } from 'react';
import { Link, useLocation } from 'wouter';
import { useMe, useSettings } from '../call/index.ts';
import { useChanges } from '../call/useChanges.ts';
import { Busy } from '../kit/index.ts';
import { SignInSheet } from '../signIn/SignInSheet.tsx';
import { FindBox } from './FindBox.tsx';
import { LineNotice } from './LineNotice.tsx';
import { MoreSheet } from './MoreSheet.tsx';
import { loadPages, Pages } from './Pages.tsx';
import { places, Sign } from './places.tsx';
import { Slip } from './Slip.tsx';
import { StopBanner } from './StopBanner.tsx';
import { WhoSheet } from './WhoSheet.tsx';

/** Everything around a page: where one can go, who is here, and whether the line to the server is up. */
export function Frame() {
  const [path] = useLocation();
  const me = useMe();
  const { name } = useSettings();
  const line = useChanges();
  const [isWhoOpen, setWhoOpen] = useState(false);
  const [isMoreOpen, setMoreOpen] = useState(false);
  const main = useRef<HTMLElement>(null);
  const previous = useRef(path);
  useEffect(() => {
    if (previous.current === path) return;
    previous.current = path;
    // A reader of the screen should begin at the new page, not where the old one was left.
    scrollTo(0, 0);
    main.current?.focus({ preventScroll: true });
  }, [path]);
  useEffect(loadPages, []);
  const isAt = (to: string) => (to === '/' ? path === '/' : path === to || path.startsWith(`${to}/`));
  const links = places.map(({ to, words, sign, isOnBar }) => ({
    to,
    words,
    sign,
    isOnBar,
    current: isAt(to),
  }));
  return (
    <>
      <a className="unseen skip" href="#main">
        To the page
      </a>
      <header className="top">
        <Link href="/" className="house">
          {name}
        </Link>
        <nav aria-label="Main">
          {links.map(({ to, words, current }) => (
            <Link key={to} href={to} {...(current ? { 'aria-current': 'page' } : {})}>
              {words}
            </Link>
          ))}
        </nav>
        <div className="grow" />
        <FindBox />
        <button type="button" className="who" onClick={() => setWhoOpen(true)}>
          <span className="dot" aria-hidden="true">
            {initials(me?.name ?? '?')}
          </span>
          <span className="called">{me?.name.split(' ')[0] ?? 'Signed out'}</span>
          <span className="unseen">: switch person, sign out</span>
        </button>
      </header>
      <LineNotice line={line} />
      <StopBanner />
      <main id="main" ref={main} tabIndex={-1} style={{ outline: 'none' }}>
        {/* Another person begins with a page of their own, not with what the one before had open on it. */}
        <Slip key={`${me?.person ?? ''} ${path}`}>
          <Suspense fallback={<Busy words="Opening" />}>
            <Pages />
          </Suspense>
        </Slip>
      </main>
      <nav className="nav bar" aria-label="Main, at the bottom">
        {links
          .filter(({ isOnBar }) => isOnBar)
          .map(({ to, words, sign, current }) => (
            <Link key={to} href={to} {...(current ? { 'aria-current': 'page' } : {})}>
              <Sign sign={sign} />
              {words}
            </Link>
          ))}
        <button
          type="button"
          onClick={() => setMoreOpen(true)}
          {...(links.some(({ isOnBar, current }) => current && !isOnBar) ? { 'aria-current': true } : {})}
        >
          <Sign sign="more" />
          More
        </button>
      </nav>
      <MoreSheet isOpen={isMoreOpen} onClose={() => setMoreOpen(false)} />
      <WhoSheet isOpen={isWhoOpen} onClose={() => setWhoOpen(false)} />
      <SignInSheet />
    </>
  );
}

export const initials = (name: string): string =>
  name
    .split(/\s+/)
    .map((word) => [...word][0] ?? '')
    .slice(0, 2)
    .join('')
    .toUpperCase();
