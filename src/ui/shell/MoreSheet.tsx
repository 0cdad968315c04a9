import { Link } from 'wouter';
import { useMe } from '../call/index.ts';
import { Sheet } from '../kit/index.ts';
import { type Place, places, Sign } from './places.tsx';

type Elsewhere = Pick<Place, 'to' | 'words' | 'sign'>;
const people: Elsewhere = { to: '/people', words: 'People', sign: 'people' };
const safekeeping: Elsewhere = { to: '/safekeeping', words: 'Safekeeping', sign: 'safekeeping' };

/** Where one can go beyond the few places on a phone’s bottom bar. */
export function MoreSheet({ isOpen, onClose }: { readonly isOpen: boolean; readonly onClose: () => void }) {
  const isOwner = useMe()?.roles.includes('owner') === true;
  const rest: readonly Elsewhere[] = [
    ...places.filter(({ isOnBar }) => !isOnBar),
    ...(isOwner ? [people] : []),
    safekeeping,
  ];
  return (
    <Sheet title="More" isOpen={isOpen} onClose={onClose}>
      <nav className="nav elsewhere" aria-label="More places">
        {rest.map(({ to, words, sign }) => (
          <Link key={to} className="btn ghost" href={to} onClick={onClose}>
            <Sign sign={sign} />
            {words}
          </Link>
        ))}
      </nav>
    </Sheet>
  );
}
