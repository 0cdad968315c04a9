import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import type { VerifyProgress } from '../../contract/index.ts';
import type { SealBroken } from '../../dossier/recordProblem.ts';
import { asked, call, type ShownProblem } from '../call/index.ts';
import { Busy, Button, FactList, Notice, ProblemNotice, Section } from '../kit/index.ts';
import { OwnerOnly } from './OwnerOnly.tsx';

interface Verification {
  readonly streams: number;
  readonly entries: number;
  readonly headSeal: string;
  readonly broken: readonly SealBroken[];
  readonly photographs: {
    readonly checked: number;
    readonly missing: readonly string[];
    readonly altered: readonly string[];
  };
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
        Every entry carries a seal over itself and the entry before it, and every photograph is named by its
        own contents. This reckons them all again and tells whether anything was altered or is missing.
      </p>
      {isOwner ? null : <OwnerOnly />}
      {isBusy ? <Progress /> : null}
      {isOwner && !isBusy ? <Button onPress={verify}>Verify now</Button> : null}
      <ProblemNotice problem={problem} />
      {found === null ? null : <Found found={found} />}
    </Section>
  );
}

const doingWords = {
  seals: 'Reckoning every seal again',
  photographs: 'Reading every photograph again',
} as const;
const askEveryMs = 700;

/** How far the running check is, as the server tells it. */
function Progress() {
  const { data } = useQuery({
    queryKey: ['verifying'],
    queryFn: () => asked(call<VerifyProgress | null>('/api/safekeeping/verify')),
    refetchInterval: askEveryMs,
    gcTime: 0,
  });
  if (data === null || data === undefined) return <Busy words={doingWords.seals} />;
  const { doing, done, of } = data;
  return <Busy words={doingWords[doing]} done={of === 0 ? undefined : done / of} />;
}

function Found({ found }: { readonly found: Verification }) {
  const { broken, photographs } = found;
  const lost = [
    ...photographs.missing.map((photo) => ({ photo, words: 'is missing' })),
    ...photographs.altered.map((photo) => ({ photo, words: 'is not what it was when it was recorded' })),
  ];
  const faults = broken.length + lost.length;
  return (
    <div role="status">
      {faults === 0 ? (
        <Notice tone="ok" title="Every seal holds. Nothing was altered, nothing is missing." />
      ) : (
        <Notice
          tone="stop"
          title={
            faults === 1
              ? 'One thing is not as it was recorded.'
              : `${faults} things are not as they were recorded.`
          }
        >
          <p>Stop work on these dossiers, keep this machine as it is, and compare with your last backup.</p>
        </Notice>
      )}
      {broken.map((problem) => (
        <ProblemNotice key={`${problem.facts.stream}/${problem.facts.revision}`} problem={problem} />
      ))}
      {lost.map(({ photo, words }) => (
        <Notice key={photo} tone="stop" title={`A photograph ${words}.`}>
          <p>
            Its name is <code className="seal">{photo}</code>. Papers that show it can no longer be relied on.{' '}
            <b>Look for the file of that name in your last backup.</b>
          </p>
        </Notice>
      ))}
      <FactList
        rows={[
          { name: 'Entries', value: found.entries.toLocaleString('en-GB') },
          { name: 'Dossiers and other records', value: found.streams.toLocaleString('en-GB') },
          { name: 'Photographs', value: photographs.checked.toLocaleString('en-GB') },
          {
            name: 'Last seal',
            value: <code className="seal">{found.headSeal === '' ? 'none yet' : found.headSeal}</code>,
            why: 'Write it down or print it: a record cut short later will not end on it.',
          },
        ]}
      />
    </div>
  );
}
