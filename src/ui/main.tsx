import '@fontsource-variable/source-serif-4/wght.css';
import 'vazirmatn/Vazirmatn-Variable-font-face.css';
import './look.css';
import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { createRoot } from 'react-dom/client';
import { problemOf } from './call/index.ts';
import { readyBell } from './kit/bell.ts';
import { openKept } from './kit/kept.ts';
import { House } from './shell/House.tsx';

const cache = new QueryClient({
  defaultOptions: {
    queries: {
      staleTime: 30_000,
      // Worth asking again only when no answer came or the server stumbled; a refusal stays a refusal.
      retry: (failures, error) => {
        const status = problemOf(error)?.status ?? 0;
        return failures < 2 && (status === 0 || status >= 500);
      },
    },
  },
});

async function open() {
  await openKept();
  readyBell();
  const page = document.getElementById('page');
  if (page === null) return;
  createRoot(page).render(
    <QueryClientProvider client={cache}>
      <House />
    </QueryClientProvider>,
  );
}

open();
