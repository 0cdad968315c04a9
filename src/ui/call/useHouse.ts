import { useQuery } from '@tanstack/react-query';
import type { WorkshopSettings } from '../../dossier/workshopFacts.ts';
import { asked } from './asked.ts';
import { call } from './call.ts';
import type { Colleague, HouseState, Me } from './wire.ts';

/** Whether the workshop is set up, who is signed in, and its settings. */
export const useHouse = () =>
  useQuery({
    queryKey: ['state'],
    queryFn: () => asked(call<HouseState>('/api/state', { asksToSignIn: false })),
  });

/** Who is signed in on this device; null while nobody is. */
export const useMe = (): Me | null => useHouse().data?.signedIn ?? null;

export const usePeople = (): readonly Colleague[] => useHouse().data?.people ?? [];

/** The workshop's settings; only pages inside the house ask, and those are drawn once the state is known. */
export function useSettings(): WorkshopSettings {
  const { data } = useHouse();
  if (data === undefined) throw new Error('the settings were asked for before the house was open');
  return data.settings;
}
