import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { call, type ShownProblem } from '../call/index.ts';
import { Button, LineField, ProblemNotice, Section } from '../kit/index.ts';

const leastCharacters = 10;

/** Makes the owner's account of a new house; the code proves that who asks can read the server's terminal. */
export function FirstStartPage() {
  const cache = useQueryClient();
  const [code, setCode] = useState('');
  const [workshopName, setWorkshopName] = useState('');
  const [name, setName] = useState('');
  const [passphrase, setPassphrase] = useState('');
  const [again, setAgain] = useState('');
  const [problem, setProblem] = useState<ShownProblem | null>(null);
  const [isBusy, setBusy] = useState(false);
  const [isTried, setTried] = useState(false);
  const missing = (text: string, what: string) =>
    isTried && text.trim() === '' ? `This is still empty. ${what}` : null;
  const isShort = (isTried || passphrase !== '') && passphrase.length < leastCharacters;
  const differs = (isTried || again !== '') && again !== passphrase;
  const isComplete =
    [code, workshopName, name].every((text) => text.trim() !== '') && !isShort && again === passphrase;
  const make = async () => {
    setBusy(true);
    const answer = await call('/api/first-owner', {
      method: 'POST',
      body: { code: code.trim(), name: name.trim(), passphrase, workshopName: workshopName.trim() },
      asksToSignIn: false,
    });
    setBusy(false);
    if (!answer.ok) return setProblem(answer.problem);
    await cache.invalidateQueries();
  };
  return (
    <main className="page narrow">
      <p className="stepno">Wefthouse</p>
      <h1>Open your workshop</h1>
      <p className="lead">This makes the owner’s account. Everyone else is added later on the page People.</p>
      <form
        style={{ marginTop: 18 }}
        onSubmit={(event) => {
          event.preventDefault();
          setTried(true);
          if (!isBusy && isComplete && passphrase !== '') make();
        }}
      >
        <Section title="Show that you may">
          <LineField
            label="One-time code"
            hint="It stands in the terminal where Wefthouse was started. It works once."
            value={code}
            onChange={setCode}
            problem={missing(code, 'Copy it from the terminal.')}
            isRequired
          />
        </Section>
        <Section title="The workshop and its owner">
          <div className="form">
            <LineField
              label="Name of the workshop"
              hint="As it is printed on papers."
              value={workshopName}
              onChange={setWorkshopName}
              problem={missing(workshopName, 'Write the workshop’s name.')}
              autoComplete="organization"
              isRequired
            />
            <LineField
              label="Your name"
              value={name}
              onChange={setName}
              problem={missing(name, 'Write the name you sign in with.')}
              autoComplete="username"
              isRequired
            />
            <LineField
              label="Passphrase"
              hint={`At least ${leastCharacters} characters; a few words that only you would put together.`}
              type="password"
              value={passphrase}
              onChange={setPassphrase}
              autoComplete="new-password"
              problem={
                isShort ? `This has ${passphrase.length} characters; it needs ${leastCharacters}.` : null
              }
              isRequired
            />
            <LineField
              label="Passphrase once more"
              type="password"
              value={again}
              onChange={setAgain}
              autoComplete="new-password"
              problem={differs ? 'The two are not the same yet. Type the same passphrase twice.' : null}
              isRequired
            />
          </div>
        </Section>
        <ProblemNotice problem={problem} />
        <Button type="submit" wide isDisabled={isBusy}>
          {isBusy ? 'Opening the house…' : 'Open the house'}
        </Button>
      </form>
    </main>
  );
}
