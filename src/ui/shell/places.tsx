const signs = {
  today: 'M5 12h3M16 12h3M12 5v3M7 7l2 2M17 7l-2 2M4 17h16M8.5 17a3.5 3.5 0 0 1 7 0M8 21h8',
  rugs: 'M6 4h12v16H6zM9 7.5h6v9H9zM7.5 2v2M10.5 2v2M13.5 2v2M16.5 2v2M7.5 20v2M10.5 20v2M13.5 20v2M16.5 20v2',
  receive: 'M14 4h6v16h-6M3 12h11M10 8l4 4-4 4',
  clients: 'M12 12a4 4 0 1 0 0-8 4 4 0 0 0 0 8zM4 21c1-4.5 4-6.5 8-6.5s7 2 8 6.5',
  drying: 'M3 5h18M6 5v13h5V5M13 5v9h5V5M7 21c0-1 1-1 1-2M10 21c0-1 1-1 1-2',
  bench: 'M3 9h18v6H3zM6.5 9v3M10 9v2M13.500 9v3M17 9v2M6 15v5M18 15v5',
  workshop: 'M4 21V10l8-6 8 6v11zM9 21v-6h6v6',
  shelf: 'M3 10h18M3 20h18M5 10V5h4v5M12 10V4h3v6M6 20v-6h5v6M15 20v-5h3v5',
  rules: 'M6 3h12v18H6zM9 8h6M9 12h6M9 16h4',
  people:
    'M9 11a3.5 3.5 0 1 0 0-7 3.5 3.5 0 0 0 0 7zM2 20c1-4.500 4-6 7-6s6 1.500 7 6M16 4.500a3.500 3.500 0 0 1 0 6.500M19 14.500c2 1 2.500 3 3 5.500',
  safekeeping: 'M12 3l8 3v6c0 5-4 8-8 9-4-1-8-4-8-9V6zM9 12l2 2 4-4',
  more: 'M4 6h16M4 12h16M4 18h16',
} as const;

export interface Place {
  readonly to: string;
  readonly words: string;
  readonly sign: keyof typeof signs;
  /** Whether it stands on a phone's bottom bar; the rest is behind its last sign, More. */
  readonly isOnBar: boolean;
}

export const places: readonly Place[] = [
  { to: '/', words: 'Today', sign: 'today', isOnBar: true },
  { to: '/rugs', words: 'Rugs', sign: 'rugs', isOnBar: true },
  { to: '/receive', words: 'Receive', sign: 'receive', isOnBar: true },
  { to: '/rooms', words: 'Drying', sign: 'drying', isOnBar: true },
  { to: '/clients', words: 'Clients', sign: 'clients', isOnBar: false },
  { to: '/bench', words: 'Bench', sign: 'bench', isOnBar: true },
  { to: '/shelf', words: 'Shelf', sign: 'shelf', isOnBar: false },
  { to: '/rules', words: 'Rules', sign: 'rules', isOnBar: false },
  { to: '/workshop', words: 'Workshop', sign: 'workshop', isOnBar: false },
];

export function Sign({ sign }: { readonly sign: Place['sign'] }) {
  return (
    <svg viewBox="0 0 24 24" aria-hidden="true">
      <path d={signs[sign]} />
    </svg>
  );
}
