import { useMemo } from 'react';
import { type SpottingCard, spottingCards } from '../../core/wash/index.ts';
import { agreedPlan, planFactsOf, workEventsOf } from '../../dossier/index.ts';
import { useDossier } from '../dossier/dossierView.ts';

/** The spotting cards of this rug, in the order to work them. */
export function useCards(): readonly SpottingCard[] {
  const { standing, settings, now, plan } = useDossier();
  return useMemo(() => {
    const facts = planFactsOf(standing, settings, now);
    const bounds = agreedPlan(standing)?.bounds ?? (plan.ok ? plan.value.bounds : null);
    return facts.ok && bounds !== null
      ? spottingCards(facts.value, bounds, workEventsOf(standing, settings))
      : [];
  }, [standing, settings, now, plan]);
}
