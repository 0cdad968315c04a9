import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { type Colleague, call, type ShownProblem } from '../call/index.ts';
import { Button, LineField, Notice, ProblemNotice, Section, Sheet } from '../kit/index.ts';
import { PinField } from './AddPersonSheet.tsx';
import { RoleChoice } from './RoleChoice.tsx';

/** Changes one person's name, roles and secrets, or lets them leave. */
export function PersonSheet({
  person,
  onClose,
}: {
  readonly person: Colleague;
  readonly onClose: () => void;
}) {
  const cache = useQueryClient();
  const [name, setName] = useState(person.name);
  const [roles, setRoles] = useState(person.roles);
  const [passphrase, setPassphrase] = useState('');
  const [pin, setPin] = useState('');
  const [problem, setProblem] = useState<ShownProblem | null>(null);
  const [done, setDone] = useState<string | null>(null);
  const [isBusy, setBusy] = useState(false);
  const at = `/api/people/${encodeURIComponent(person.person)}`;
  const put = async (path: string, body: object, words: string) => {
    setBusy(true);
    const answer = await call(path, { method: 'PUT', body });
    setBusy(false);
    setProblem(answer.ok ? null : answer.problem);
    setDone(answer.ok ? words : null);
    if (answer.ok) await cache.invalidateQueries({ queryKey: ['state'] });
  };
  const secret = { ...(passphrase === '' ? {} : { passphrase }), ...(pin === '' ? {} : { pin }) };
  return (
    <Sheet title={person.name} isOpen onClose={onClose}>
      <ProblemNotice problem={problem} />
      {done === null ? null : <Notice tone="ok" title={done} />}
      <Section title="Name and roles">
        <div className="form">
          <LineField label="Name" value={name} onChange={setName} isRequired />
          <RoleChoice value={roles} onChange={(next) => setRoles([...next])} />
          <Button
            isDisabled={isBusy || name.trim() === '' || roles.length === 0}
            onPress={() => put(at, { name: name.trim(), roles, left: false }, 'Name and roles are recorded.')}
          >
            {person.left ? 'Take back into the house' : 'Record name and roles'}
          </Button>
        </div>
      </Section>
      <Section title="Passphrase and PIN">
        <div className="form">
          <LineField
            label="New passphrase"
            hint="At least 10 characters. The old one ends at once."
            type="password"
            autoComplete="new-password"
            value={passphrase}
            onChange={setPassphrase}
          />
          <PinField value={pin} onChange={setPin} />
          <div className="actions">
            <Button
              isDisabled={isBusy || Object.keys(secret).length === 0}
              onPress={async () => {
                await put(`${at}/secret`, secret, 'The new passphrase or PIN holds from now on.');
                setPassphrase('');
                setPin('');
              }}
            >
              Set
            </Button>
            {person.hasPin ? (
              <Button
                tone="ghost"
                isDisabled={isBusy}
                onPress={() => put(`${at}/secret`, { pin: null }, 'The PIN is taken away.')}
              >
                Take the PIN away
              </Button>
            ) : null}
          </div>
        </div>
      </Section>
      {person.left ? null : (
        <Section title="Leaves the workshop">
          <p>They can no longer sign in. What they recorded keeps their name.</p>
          <Button
            tone="stop"
            isDisabled={isBusy}
            onPress={() =>
              put(
                at,
                { name: person.name, roles: person.roles, left: true },
                `${person.name} can no longer sign in.`,
              )
            }
          >
            {person.name} leaves
          </Button>
        </Section>
      )}
    </Sheet>
  );
}
