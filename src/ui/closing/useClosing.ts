import { useState } from 'react';
import { latestVisit, type RugFact, type RugFactOf } from '../../dossier/index.ts';
import { type Answered, call, type ShownProblem, useRecord, useRug, useSettings } from '../call/index.ts';
import type { Signature } from '../condition/index.ts';
import { goToSlip } from '../kit/index.ts';

/** What every closing section reads of a rug, and how it records. */
export function useClosing(rug: string) {
  const { standing, client, isLoading } = useRug(rug);
  const { record, isBusy } = useRecord(rug);
  const settings = useSettings();
  const [problem, setProblem] = useState<ShownProblem | null>(null);
  const visit = latestVisit(standing);
  const act = async (...facts: readonly RugFact[]): Promise<boolean> => {
    if (goToSlip()) return false;
    setProblem(null);
    const answer = await record(facts);
    if (!answer.ok) setProblem(answer.problem);
    return answer.ok;
  };
  /** Keeps a signature with the client, where it can be erased with them. */
  const keepSignature = async (signature: Signature): Promise<boolean> => {
    setProblem(null);
    const of = visit?.received.client ?? '';
    const answer: Answered<unknown> = await call(`/api/clients/${encodeURIComponent(of)}/entries`, {
      method: 'POST',
      body: { expectedRevision: 0, drafts: [{ id: signature.signature, fact: signature }] },
    });
    if (!answer.ok) setProblem(answer.problem);
    return answer.ok;
  };
  return {
    standing,
    client,
    visit,
    /** Whether the visit is under way, so that its work may go on. */
    isOpen: visit !== null && visit.end === null && visit.declined === null,
    /** Whether the rug is still in the workshop's care. */
    isHere: visit !== null && visit.end === null,
    isLoading,
    settings,
    act,
    keepSignature,
    isBusy,
    problem,
  };
}

/** A photograph just sent, as the fact that it was taken. */
export const photographFact = (
  {
    photo,
    widthPx,
    heightPx,
  }: { readonly photo: string; readonly widthPx: number; readonly heightPx: number },
  shows: RugFactOf<'PhotographTaken'>['shows'],
  occasion: RugFactOf<'PhotographTaken'>['occasion'],
): RugFactOf<'PhotographTaken'> => ({ type: 'PhotographTaken', photo, widthPx, heightPx, shows, occasion });
