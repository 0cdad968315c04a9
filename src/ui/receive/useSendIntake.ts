import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { ConsignmentAnswer } from '../../contract/index.ts';
import { call, type ShownProblem } from '../call/index.ts';
import { clientFactsOf } from '../client/ClientForm.tsx';
import { newId } from '../kit/index.ts';
import type { Intake } from './intake.ts';
import { rugFactsOf, rugTitle } from './intakeFacts.ts';

/** Records a consignment in one call. The same content is always sent under the same ids, so never twice. */
export function useSendIntake(intake: Intake, change: (part: Partial<Intake>) => void) {
  const cache = useQueryClient();
  const [isBusy, setBusy] = useState(false);
  const [problem, setProblem] = useState<ShownProblem | null>(null);
  const send = async () => {
    const { client, signature, consignment } = intake;
    if (client.kind === 'none' || (signature === null && intake.unsigned === null)) return;
    const facts = intake.rugs.map((rug) => rugFactsOf(intake, rug));
    const said = JSON.stringify([client, signature, facts]);
    const ids = intake.sent?.said === said ? intake.sent.ids : facts.map((ofRug) => ofRug.map(() => newId()));
    change({ sent: { said, ids } });
    setBusy(true);
    setProblem(null);
    const answer = await call<ConsignmentAnswer>('/api/consignments', {
      method: 'POST',
      body: {
        consignment,
        client:
          client.kind === 'new'
            ? { client: client.client, added: { type: 'ClientAdded', ...clientFactsOf(client.typed) } }
            : { client: client.client },
        ...(signature === null ? {} : { signature }),
        rugs: intake.rugs.map(({ rug }, index) => ({
          rug,
          drafts: (facts[index] ?? []).map((fact, at) => ({ id: ids[index]?.[at] ?? newId(), fact })),
        })),
      },
    });
    setBusy(false);
    if (!answer.ok) {
      setProblem(answer.problem);
      return;
    }
    for (const queryKey of [['rows'], ['today'], ['clients']]) cache.invalidateQueries({ queryKey });
    const numbers = new Map(answer.value.rugs.map(({ rug, number }) => [rug, number]));
    change({
      recorded: intake.rugs.map((rug) => ({
        rug: rug.rug,
        number: numbers.get(rug.rug) ?? 0,
        title: rugTitle(rug),
        tag: rug.tag.trim(),
      })),
    });
  };
  return { send, isBusy, problem };
}
