import type { TodayRow } from '../../contract/index.ts';
import type { NextStep } from '../../dossier/nextStep.ts';
import { nextStepWords } from '../../text/nextStepWords.ts';
import { DueFace, dayWords, instantWords, roughly, useNow } from '../kit/index.ts';
import { RugLine } from '../rugs/RugLine.tsx';

const tones = { now: 'now', soon: 'soon', later: 'later', waiting: 'wait' } as const;

/** Deeds that end by the clock: shown running to the second, and they ring. */
const isTimed = ({ deed }: NextStep) => deed.code === 'end-dwell' || deed.code === 'read-blot';

/** One rug on Today: what to do in large letters, where, and how the time stands. */
export function TodayLine({ row }: { readonly row: TodayRow }) {
  const [first, ...others] = row.next;
  if (first === undefined) return <RugLine row={row} tone="later" />;
  const words = nextStepWords(first.deed);
  // What is lacking on the shelf is said of a rug whatever else waits first.
  const lacking = others.find(({ deed }) => deed.code === 'mend-shelf');
  const detail =
    lacking === undefined ? words.detail : `${words.detail} · ▲ ${nextStepWords(lacking.deed).title}`;
  const alsoRunning = others.filter((step) => step.dueAt !== null && isTimed(step));
  return (
    <RugLine
      row={row}
      title={words.title}
      detail={detail}
      tone={tones[first.urgency]}
      aside={
        <>
          <Aside step={first} row={row} />
          {alsoRunning.map((step) => (
            <Aside key={`${step.deed.code}/${step.dueAt}`} step={step} row={row} isSecond />
          ))}
        </>
      }
    />
  );
}

function Aside(props: { readonly step: NextStep; readonly row: TodayRow; readonly isSecond?: boolean }) {
  const { step, row } = props;
  if (step.dueAt !== null && isTimed(step)) {
    const label = props.isSecond === true ? nextStepWords(step.deed).title : '';
    return (
      <DueFace
        dueAt={Date.parse(step.dueAt)}
        label={label}
        of={`until ${instantWords(step.dueAt)}`}
        isSmall
      />
    );
  }
  return <QuietAside step={step} row={row} />;
}

function QuietAside({ step, row }: { readonly step: NextStep; readonly row: TodayRow }) {
  const now = useNow(30_000);
  const { deed, dueAt } = step;
  if (deed.code === 'take-drying-reading' && row.body.wetSince !== null) {
    const hours = (now - Date.parse(row.body.wetSince)) / 3_600_000;
    return (
      <>
        <b>{Math.floor(hours)} h</b>
        <span>{hours >= 48 ? '▲ wet; red' : hours >= 24 ? '◆ wet; amber' : 'wet'}</span>
      </>
    );
  }
  if (row.body.promisedFor !== null && dueAt?.startsWith(row.body.promisedFor) === true) {
    const late = now > Date.parse(dueAt);
    return (
      <>
        <b>{dayWords(row.body.promisedFor)}</b>
        <span>{late ? '▲ promised, and past' : 'promised'}</span>
      </>
    );
  }
  if (dueAt === null) return null;
  const seconds = (Date.parse(dueAt) - now) / 1000;
  return (
    <>
      <b>{roughly(seconds)}</b>
      <span>{seconds < 0 ? 'since it fell due' : 'until it is due'}</span>
    </>
  );
}
