import { useQueryClient } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import type { RugAnswer } from '../../contract/index.ts';
import type { RugEntry, RugFact } from '../../dossier/facts/index.ts';
import { newId } from '../kit/newId.ts';
import { type Answered, call } from './call.ts';
import type { RugDraft } from './wire.ts';

interface Recorded {
  readonly entries: readonly RugEntry[];
}

const pauses = [400, 1500];
const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

/** Adds what was recorded to what is known, whichever of the two came first. */
const joined = (known: RugAnswer, entries: readonly RugEntry[]): RugAnswer => {
  const byRevision = new Map([...known.entries, ...entries].map((entry) => [entry.revision, entry]));
  return { ...known, entries: [...byRevision.values()].sort((a, b) => a.revision - b.revision) };
};

/**
 * Records facts of a rug. A try that got no answer is made again with the same ids, so that nothing is
 * recorded twice; an expired session asks to sign in over the page. The caller keeps what was typed until
 * the answer is `ok`.
 */
export function useRecord(rug: string) {
  const cache = useQueryClient();
  const [isBusy, setBusy] = useState(false);
  /** Ids of tries whose outcome is not known, by what they say. */
  const tried = useRef(new Map<string, readonly RugDraft[]>());
  const record = async (facts: readonly RugFact[]): Promise<Answered<Recorded>> => {
    const said = JSON.stringify(facts);
    const drafts = tried.current.get(said) ?? facts.map((fact) => ({ id: newId(), fact }));
    tried.current.set(said, drafts);
    setBusy(true);
    const send = () => {
      const known = cache.getQueryData<RugAnswer>(['rug', rug]);
      const expectedRevision = known?.entries.at(-1)?.revision ?? 0;
      return call<Recorded>(`/api/rugs/${encodeURIComponent(rug)}/entries`, {
        method: 'POST',
        body: { expectedRevision, drafts },
      });
    };
    let answer = await send();
    for (const ms of pauses) {
      if (answer.ok || answer.problem.status !== 0) break;
      await pause(ms);
      answer = await send();
    }
    setBusy(false);
    if (answer.ok) {
      const { entries } = answer.value;
      cache.setQueryData<RugAnswer>(['rug', rug], (known) => known && joined(known, entries));
    }
    if (answer.ok || answer.problem.status >= 400) tried.current.delete(said);
    if (!answer.ok && answer.problem.status === 409)
      await cache.invalidateQueries({ queryKey: ['rug', rug] });
    return answer;
  };
  return { record, isBusy };
}
