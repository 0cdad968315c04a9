import { useQuery, useQueryClient } from '@tanstack/react-query';
import type { WorkshopSettings } from '../../dossier/workshopFacts.ts';
import { keepFor } from '../kit/kept.ts';
import { asked } from './asked.ts';
import { call } from './call.ts';
import type { Colleague, HouseState, Me } from './wire.ts';

/**
 * Whether the workshop is set up, who is signed in, and its settings. A session that ended does not change who
 * sits at this screen: the page stays as it is, and the next thing they record asks them to sign in again.
 */
export function useHouse() {
  const cache = useQueryClient();
  return useQuery({
    queryKey: ['state'],
    queryFn: async (): Promise<HouseState> => {
      const fresh = await asked(call<HouseState>('/api/state', { asksToSignIn: false }));
      if (fresh.signedIn !== null) keepFor(fresh.signedIn.person);
      const known = cache.getQueryData<HouseState>(['state']);
      if (fresh.signedIn !== null || known === undefined || known.signedIn === null) return fresh;
      return { ...known, settings: fresh.settings };
    },
  });
}

/** Who is signed in on this device; null while nobody is. */
export const useMe = (): Me | null => useHouse().data?.signedIn ?? null;

export const usePeople = (): readonly Colleague[] => useHouse().data?.people ?? [];

/** The workshop's settings; only pages inside the house ask, and those are drawn once the state is known. */
export function useSettings(): WorkshopSettings {
  const { data } = useHouse();
  if (data === undefined) throw new Error('the settings were asked for before the house was open');
  return data.settings;
}
