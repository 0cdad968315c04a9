import { useState } from 'react';
import type { FlowStep } from '../../core/wash/index.ts';
import { type FlowAtPlace, flowsOf, type RugFact } from '../../dossier/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { stainWords } from '../dossier/figures.ts';
import { sourceWords } from '../dossier/limitWords.ts';
import { Part } from '../dossier/Part.tsx';
import { nothingTyped, useField, useForm } from '../dossier/useForm.ts';
import { Button, Choice, PhotoTaker, ProblemNotice, TimerFace, When } from '../kit/index.ts';
import { BeginFlowSheet } from './BeginFlowSheet.tsx';
import { ReadingPad, type Slot, type Typed, valueIn } from './ReadingPad.tsx';

type Key = 'conductivity' | 'supply' | 'ph' | 'supplyPh';
const readingSlots: readonly Slot<Key>[] = [
  { key: 'conductivity', name: 'Taken up', unit: 'µS/cm', least: 0, most: 200_000 },
  { key: 'supply', name: 'Supply', unit: 'µS/cm', least: 0, most: 200_000 },
  { key: 'ph', name: 'pH taken up', unit: '', least: 0, most: 14 },
  { key: 'supplyPh', name: 'Supply pH', unit: '', least: 0, most: 14 },
];
const acidSlots: readonly Slot<Key>[] = [{ key: 'ph', name: 'pH on the pile', unit: '', least: 0, most: 14 }];

/** What a step at hand asks to be written down. */
function LogStep({ place, step }: { readonly place: FlowAtPlace; readonly step: FlowStep }) {
  const { flow, mark } = place;
  const { form, act, isBusy, problem } = useForm(`flow/${flow.id}/${mark ?? 'rug'}/${step.id}`);
  const [typed, setTyped] = useField<Typed<Key>>(form, 'typed', nothingTyped);
  const slots = step.log === 'reading' ? readingSlots : step.log === 'pH' ? acidSlots : [];
  const value = (key: Key) => {
    const slot = slots.find((one) => one.key === key);
    return slot === undefined ? null : valueIn(slot, typed);
  };
  const log = (
    more: { readonly choice?: string; readonly photos?: string[] },
    ...others: readonly RugFact[]
  ) => {
    const [us, supply, ph, supplyPh] = [
      value('conductivity'),
      value('supply'),
      value('ph'),
      value('supplyPh'),
    ];
    return act(
      {
        ...{ type: 'FlowLogged', flow: flow.id, step: step.id, photos: more.photos ?? [] },
        ...(mark === undefined ? {} : { mark }),
        ...(more.choice === undefined ? {} : { choice: more.choice }),
        ...(us === null ? {} : { conductivityUsPerCm: us }),
        ...(supply === null ? {} : { supplyConductivityUsPerCm: supply }),
        ...(ph === null ? {} : { ph }),
        ...(supplyPh === null ? {} : { supplyPh }),
      },
      ...others,
    );
  };
  const choose = (id: string) => {
    const chosen = step.choices?.find((one) => one.id === id);
    const { finding, certainty } = chosen ?? {};
    return finding === undefined || certainty === undefined
      ? log({ choice: id })
      : log({ choice: id }, { type: 'FindingNoted', finding, certainty, evidence: 'seen' });
  };
  const isReadable = step.log === 'reading' ? value('conductivity') !== null : value('ph') !== null;
  return (
    <>
      {step.log === 'tests' && <p className="why">Make the blots in the dossier; it goes on by itself.</p>}
      {step.log === 'corrective aim' && (
        <p className="why">Record the corrective aim in the dossier’s plan.</p>
      )}
      {step.log === 'photograph' && (
        <PhotoTaker label="Photograph it" onTaken={({ photo }) => log({ photos: [photo] })} />
      )}
      {step.log === 'choice' && (
        <Choice
          label={step.do}
          columns={1}
          options={(step.choices ?? []).map(({ id, words }) => ({ value: id, words }))}
          value={null}
          onChange={choose}
        />
      )}
      {slots.length > 0 && <ReadingPad slots={slots} typed={typed} onChange={setTyped} />}
      <ProblemNotice problem={problem} />
      {(step.log === 'done' || slots.length > 0) && (
        <Button wide isDisabled={isBusy || (slots.length > 0 && !isReadable)} onPress={() => log({})}>
          {slots.length > 0 ? 'Record the reading' : 'Done'}
        </Button>
      )}
    </>
  );
}

const signs = { done: '✓', now: '▶', later: '·' } as const;

function OneFlow({ place }: { readonly place: FlowAtPlace }) {
  const { standing, visit, open, nameOf } = useDossier();
  const { flow, mark, steps, begun } = place;
  const title = `${flow.title}${mark === undefined ? '' : `: ${stainWords(standing.marks, mark)}`}`;
  const last = visit?.flowLog.findLast((entry) => entry.flow === flow.id && entry.mark === mark);
  return (
    <Part id={`flow-${flow.id}-${mark ?? 'rug'}`} title={title}>
      <p>{flow.because}</p>
      {begun !== null && (
        <p className="why">
          Begun by hand <When at={begun.when} /> by {nameOf(begun.by)}
          {begun.where === undefined ? '' : `, ${begun.where}`}: {begun.why}
        </p>
      )}
      <ol className="flow-steps">
        {steps.map(({ step, state }) => (
          <li key={step.id} className={`flow-${state}`}>
            <span aria-hidden="true">{signs[state]} </span>
            <span className="unseen">{state}: </span>
            {step.do}
            {state === 'now' && step.dwellMinutes !== undefined && last !== undefined && (
              <TimerFace startedAt={last.when} minutes={step.dwellMinutes} label="dwell" />
            )}
            {state === 'now' && open && (
              <LogStep key={`${step.id}/${last?.entry ?? ''}`} place={place} step={step} />
            )}
          </li>
        ))}
      </ol>
      <p>
        <b>Never: {flow.never.join('; ')}.</b>
      </p>
      <div className="note caution">
        {flow.cautions.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </div>
      <p className="why">{sourceWords(flow.source)}</p>
    </Part>
  );
}

/** Work with an order and a log of its own: urine, browning, tide lines, old colour runs, mould, flood. */
export function FlowPart() {
  const { standing, settings, now, open } = useDossier();
  const [beginning, setBeginning] = useState(false);
  return (
    <>
      {flowsOf(standing, { settings, now }).map((place) => (
        <OneFlow key={`${place.flow.id}/${place.mark ?? ''}`} place={place} />
      ))}
      {open && (
        <Button wide tone="ghost" onPress={() => setBeginning(true)}>
          Begin a flow: urine, browning, tide line, colour run, mould, flood
        </Button>
      )}
      {beginning && <BeginFlowSheet onClose={() => setBeginning(false)} />}
    </>
  );
}
