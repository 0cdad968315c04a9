import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { Role } from '../../dossier/workshopFacts.ts';
import { call, type ShownProblem } from '../call/index.ts';
import { Button, LineField, newId, ProblemNotice, Sheet } from '../kit/index.ts';
import { RoleChoice } from './RoleChoice.tsx';

/** Adds somebody who works here. Secrets are never kept on the device. */
export function AddPersonSheet({
  isOpen,
  onClose,
}: {
  readonly isOpen: boolean;
  readonly onClose: () => void;
}) {
  const cache = useQueryClient();
  const [person, setPerson] = useState(newId);
  const [name, setName] = useState('');
  const [roles, setRoles] = useState<readonly Role[]>(['washer']);
  const [passphrase, setPassphrase] = useState('');
  const [pin, setPin] = useState('');
  const [problem, setProblem] = useState<ShownProblem | null>(null);
  const [isBusy, setBusy] = useState(false);
  const isComplete = name.trim() !== '' && roles.length > 0 && passphrase !== '';
  const add = async () => {
    setBusy(true);
    const answer = await call('/api/people', {
      method: 'POST',
      body: { person, name: name.trim(), roles, passphrase, ...(pin === '' ? {} : { pin }) },
    });
    setBusy(false);
    if (!answer.ok) return setProblem(answer.problem);
    await cache.invalidateQueries({ queryKey: ['state'] });
    setPerson(newId());
    setName('');
    setPassphrase('');
    setPin('');
    setProblem(null);
    onClose();
  };
  return (
    <Sheet title="Add a person" isOpen={isOpen} onClose={onClose}>
      <form
        className="form"
        onSubmit={(event) => {
          event.preventDefault();
          if (isComplete && !isBusy) add();
        }}
      >
        <LineField
          label="Name"
          hint="As it stands beside their entries."
          value={name}
          onChange={setName}
          isRequired
        />
        <RoleChoice value={roles} onChange={setRoles} />
        <LineField
          label="First passphrase"
          hint="At least 10 characters. Let them choose it, or tell it to nobody else."
          type="password"
          autoComplete="new-password"
          value={passphrase}
          onChange={setPassphrase}
          isRequired
        />
        <PinField value={pin} onChange={setPin} />
        <ProblemNotice problem={problem} />
        <Button type="submit" wide isDisabled={!isComplete || isBusy}>
          {isBusy ? 'Adding…' : 'Add the person'}
        </Button>
      </form>
    </Sheet>
  );
}

export function PinField(props: { readonly value: string; readonly onChange: (pin: string) => void }) {
  return (
    <LineField
      label="PIN"
      hint="Digits, to take over a shared tablet quickly. Optional."
      type="password"
      inputMode="numeric"
      mostCharacters={12}
      value={props.value}
      onChange={props.onChange}
    />
  );
}
