import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { type Colleague, call, type ShownProblem, useMe, usePeople } from '../call/index.ts';
import { Button, Choice, LineField, Notice, ProblemNotice, Sheet } from '../kit/index.ts';

/** Who is at this tablet: another person by PIN, or sign out. */
export function WhoSheet({ isOpen, onClose }: { readonly isOpen: boolean; readonly onClose: () => void }) {
  const me = useMe();
  return (
    <Sheet
      title={me === null ? 'Nobody is signed in' : `${me.name} is signed in`}
      isOpen={isOpen}
      onClose={onClose}
    >
      <SwitchForm onSwitched={onClose} />
      <div className="actions">
        <Button tone="stop" onPress={signOut}>
          Sign out
        </Button>
      </div>
    </Sheet>
  );
}

async function signOut() {
  await call('/api/sign-out', { method: 'POST', body: {}, asksToSignIn: false });
  location.assign('/');
}

function SwitchForm({ onSwitched }: { readonly onSwitched: () => void }) {
  const cache = useQueryClient();
  const me = useMe();
  const others = usePeople().filter(
    ({ person, left, hasPin }) => person !== me?.person && left !== true && hasPin,
  );
  const [person, setPerson] = useState<string | null>(null);
  const [pin, setPin] = useState('');
  const [problem, setProblem] = useState<ShownProblem | null>(null);
  const [isBusy, setBusy] = useState(false);
  if (others.length === 0) {
    return (
      <Notice tone="plain" title="Nobody else can switch in here yet.">
        <p>
          People who have a PIN can take over this tablet in a second. The owner sets PINs on the page People.
        </p>
      </Notice>
    );
  }
  const change = async () => {
    setBusy(true);
    const answer = await call('/api/switch', { method: 'POST', body: { person, pin } });
    setBusy(false);
    setPin('');
    if (!answer.ok) return setProblem(answer.problem);
    setProblem(null);
    await cache.invalidateQueries();
    onSwitched();
  };
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        if (person !== null && pin !== '' && !isBusy) change();
      }}
    >
      <Choice label="Who takes over?" options={others.map(asOption)} value={person} onChange={setPerson} />
      {person === null ? null : (
        <LineField
          label="PIN"
          type="password"
          inputMode="numeric"
          value={pin}
          onChange={setPin}
          mostCharacters={12}
          focusFirst
          isRequired
        />
      )}
      <ProblemNotice problem={problem} />
      {person === null ? null : (
        <Button type="submit" isDisabled={pin === '' || isBusy}>
          {isBusy ? 'Switching…' : 'Switch'}
        </Button>
      )}
    </form>
  );
}

const asOption = ({ person, name, roles }: Colleague) => ({
  value: person,
  words: name,
  hint: roles.join(', '),
});
