import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { call, type Me, type ShownProblem } from '../call/index.ts';
import { Button, LineField, ProblemNotice } from '../kit/index.ts';

/** Name and passphrase. The passphrase is never kept on the device. */
export function SignInForm(props: { readonly name?: string; readonly onSignedIn: (person: string) => void }) {
  const cache = useQueryClient();
  const [name, setName] = useState(props.name ?? '');
  const [passphrase, setPassphrase] = useState('');
  const [problem, setProblem] = useState<ShownProblem | null>(null);
  const [isBusy, setBusy] = useState(false);
  const signIn = async () => {
    setBusy(true);
    const answer = await call<{ readonly signedIn: Me }>('/api/sign-in', {
      method: 'POST',
      body: { name: name.trim(), passphrase },
      asksToSignIn: false,
    });
    setBusy(false);
    if (!answer.ok) return setProblem(answer.problem);
    setPassphrase('');
    props.onSignedIn(answer.value.signedIn.person);
    await cache.invalidateQueries();
  };
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        if (!isBusy) signIn();
      }}
    >
      <LineField label="Your name" value={name} onChange={setName} autoComplete="username" isRequired />
      <LineField
        label="Passphrase"
        type="password"
        value={passphrase}
        onChange={setPassphrase}
        autoComplete="current-password"
        isRequired
      />
      <ProblemNotice problem={problem} />
      <Button type="submit" wide isDisabled={isBusy || name.trim() === '' || passphrase === ''}>
        {isBusy ? 'Signing in…' : 'Sign in'}
      </Button>
    </form>
  );
}
