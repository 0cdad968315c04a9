import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { PlanStep } from '../../core/wash/index.ts';
import { handsFor, stepId } from '../../dossier/index.ts';
import { call, type ShownProblem, useMe, usePeople } from '../call/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { useForm } from '../dossier/useForm.ts';
import { Button, Choice, LineField, newId, ProblemNotice } from '../kit/index.ts';
import { NumberKeys } from './NumberKeys.tsx';

/** Whoever helps with a step says so by PIN here, or on their own tablet; a name typed by another counts for nothing. */
export function HandsPart({ step }: { readonly step: PlanStep }) {
  const { rug, visit, now, settings, nameOf } = useDossier();
  const me = useMe();
  const cache = useQueryClient();
  const people = usePeople().filter(
    ({ left, person, hasPin, roles }) =>
      left !== true && hasPin && person !== me?.person && roles.some((role) => role !== 'counter'),
  );
  const [person, setPerson] = useState<string | null>(null);
  const [pin, setPin] = useState('');
  const [isBusy, setBusy] = useState(false);
  const [problem, setProblem] = useState<ShownProblem | null>(null);
  const { act } = useForm(`hands/${stepId(step)}`);
  if (visit === null) return null;
  const ready = handsFor(visit, stepId(step), me?.person ?? '', { now, settings });
  const isMine = visit.hands.some((hand) => hand.step === stepId(step) && hand.by === me?.person);
  const lend = async () => {
    setBusy(true);
    const answer = await call(`/api/rugs/${encodeURIComponent(rug)}/hands`, {
      method: 'POST',
      body: { id: newId(), step: stepId(step), person, pin },
    });
    setBusy(false);
    setPin('');
    setProblem(answer.ok ? null : answer.problem);
    if (answer.ok) await cache.invalidateQueries({ queryKey: ['rug', rug] });
  };
  return (
    <div className="hands">
      <p>
        <b>{step.people} people.</b>{' '}
        {ready.length === 0 ? 'Nobody stands ready to help yet.' : `Ready: ${ready.map(nameOf).join(', ')}.`}
      </p>
      {ready.length < step.people - 1 && people.length > 0 && (
        <>
          <Choice
            label="Who helps?"
            columns={2}
            options={people.map(({ person: value, name }) => ({ value, words: name }))}
            value={person}
            onChange={setPerson}
          />
          {person !== null && (
            <>
              <LineField label="Their PIN" type="password" inputMode="none" value={pin} onChange={setPin} />
              <NumberKeys label="Keys for their PIN" text={pin} onChange={setPin} isWhole />
              <Button wide tone="ghost" isDisabled={pin === '' || isBusy} onPress={lend}>
                I help with this
              </Button>
            </>
          )}
        </>
      )}
      <ProblemNotice problem={problem} />
      {!isMine && (
        <Button wide tone="ghost" onPress={() => act({ type: 'HandLent', step: stepId(step) })}>
          I only help; somebody else starts it
        </Button>
      )}
    </div>
  );
}
