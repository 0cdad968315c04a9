import { useState } from 'react';
import type { RugFact } from '../../dossier/index.ts';
import type { Problem } from '../../units/index.ts';
import { useDossier } from './dossierView.ts';

/** Recording from a form: busy while it is sent, the problem when it was refused, closed when it is kept. */
export function useAct(onKept: () => void = () => {}) {
  const { record } = useDossier();
  const [isBusy, setBusy] = useState(false);
  const [problem, setProblem] = useState<Problem | null>(null);
  const act = async (...facts: readonly RugFact[]): Promise<boolean> => {
    setBusy(true);
    setProblem(null);
    const kept = await record(facts);
    setBusy(false);
    if (!kept.ok) {
      setProblem(kept.problem);
      return false;
    }
    onKept();
    return true;
  };
  return { act, isBusy, problem };
}
