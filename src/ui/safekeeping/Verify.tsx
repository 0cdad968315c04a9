import { useState } from 'react';
import type { SealBroken } from '../../dossier/recordProblem.ts';
import { call, type ShownProblem } from '../call/index.ts';
import { Busy, Button, FactList, Notice, ProblemNotice, Section } from '../kit/index.ts';
import { OwnerOnly } from './OwnerOnly.tsx';

interface Verification {
  readonly streams: number;
  readonly entries: number;
  readonly headSeal: string;
  readonly broken: readonly SealBroken[];
}

/** Checks the seal of every entry and says plainly what it found. */
export function Verify({ isOwner }: { readonly isOwner: boolean }) {
  const [isBusy, setBusy] = useState(false);
  const [found, setFound] = useState<Verification | null>(null);
  const [problem, setProblem] = useState<ShownProblem | null>(null);
  const verify = async () => {
    setBusy(true);
    setFound(null);
    const answer = await call<Verification>('/api/safekeeping/verify', { method: 'POST', body: {} });
    setBusy(false);
    setProblem(answer.ok ? null : answer.problem);
    if (answer.ok) setFound(answer.value);
  };
  return (
    <Section title="Verify the record">
      <p>
        Every entry carries a seal over itself and the entry before it. This reckons all seals again and tells
        whether anything was altered or is missing.
      </p>
      {isOwner ? null : <OwnerOnly />}
      {isBusy ? <Busy words="Reckoning every seal again" /> : null}
      {isOwner && !isBusy ? <Button onPress={verify}>Verify now</Button> : null}
      <ProblemNotice problem={problem} />
      {found === null ? null : <Found found={found} />}
    </Section>
  );
}

function Found({ found }: { readonly found: Verification }) {
  const { broken } = found;
  return (
    <div role="status">
      {broken.length === 0 ? (
        <Notice tone="ok" title="Every seal holds. Nothing was altered, nothing is missing." />
      ) : (
        <Notice
          tone="stop"
          title={`${broken.length} ${broken.length === 1 ? 'seal is' : 'seals are'} broken.`}
        >
          <p>Stop work on these dossiers, keep this machine as it is, and compare with your last backup.</p>
        </Notice>
      )}
      {broken.map((problem) => (
        <ProblemNotice key={`${problem.facts.stream}/${problem.facts.revision}`} problem={problem} />
      ))}
      <FactList
        rows={[
          { name: 'Entries', value: found.entries.toLocaleString('en-GB') },
          { name: 'Dossiers and other records', value: found.streams.toLocaleString('en-GB') },
          {
            name: 'Last seal',
            value: <code className="seal">{found.headSeal}</code>,
            why: 'Write it down or print it: a record cut short later will not end on it.',
          },
        ]}
      />
    </div>
  );
}
