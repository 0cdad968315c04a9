import { useState } from 'react';
import type { ShelfFact } from '../../dossier/index.ts';
import { type ShownProblem, useShelfRecord } from '../call/index.ts';
import { goToSlip } from '../kit/index.ts';

/** Sends facts of the shelf together; what was typed stays until it is recorded. */
export function useSheet(onClose: () => void) {
  const record = useShelfRecord();
  const [problem, setProblem] = useState<ShownProblem | null>(null);
  const [isBusy, setBusy] = useState(false);
  const send = async (...facts: readonly ShelfFact[]) => {
    if (goToSlip()) return;
    setBusy(true);
    const answer = await record(...facts);
    setBusy(false);
    if (!answer.ok) return setProblem(answer.problem);
    onClose();
  };
  return { send, problem, isBusy };
}
