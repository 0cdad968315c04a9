import type { PlanStep } from '../../core/wash/index.ts';
import { agreedPlan } from '../../dossier/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { sourceWords } from '../dossier/limitWords.ts';
import { useField, useForm } from '../dossier/useForm.ts';
import { Button, Choice, newId, PassageField, ProblemNotice, Sheet, When } from '../kit/index.ts';
import { rescueCard, stopWords } from './rescue.ts';

/** Calls a stop: what was seen. The rescue card then stands on every tablet. */
export function StopSheet({
  step,
  onClose,
}: {
  readonly step: PlanStep | undefined;
  readonly onClose: () => void;
}) {
  const { standing } = useDossier();
  const { form, act, isBusy, problem } = useForm('stop', onClose);
  const [condition, setCondition] = useField<string | null>(form, 'condition', null);
  const [note, setNote] = useField(form, 'note', '');
  const plan = agreedPlan(standing);
  const ofStep = (plan?.stopConditions ?? [])
    .filter(({ id }) => step?.stopConditions.includes(id) ?? false)
    .map(({ when }) => when);
  const likely = stopWords.filter((words) => ofStep.includes(words));
  const options = [...likely, ...stopWords.filter((words) => !likely.includes(words))];
  const card = condition === null ? null : rescueCard(condition, plan);
  return (
    <Sheet title="Stop the wash" isOpen onClose={onClose}>
      <Choice
        label="What is seen"
        columns={1}
        options={options.map((value) => ({ value, words: value }))}
        value={condition}
        onChange={setCondition}
      />
      {card !== null && <p className="why">Rescue card: {card.title}</p>}
      <PassageField label="Note" value={note} onChange={setNote} />
      <ProblemNotice problem={problem} />
      <Button
        wide
        tone="stop"
        isDisabled={condition === null || isBusy}
        onPress={() =>
          condition !== null &&
          act({
            type: 'StopCalled',
            stop: newId(),
            condition,
            ...(note.trim() === '' ? {} : { note: note.trim() }),
          })
        }
      >
        ▲ Stop now
      </Button>
    </Sheet>
  );
}

function ClearPart({ stop }: { readonly stop: string }) {
  const { form, act, isBusy, problem } = useForm(`clear/${stop}`);
  const [how, setHow] = useField(form, 'how', '');
  return (
    <>
      <PassageField label="How it was resolved" value={how} onChange={setHow} isRequired />
      <ProblemNotice problem={problem} />
      <Button
        wide
        isDisabled={how.trim() === '' || isBusy}
        onPress={() => act({ type: 'StopCleared', stop, how: how.trim() })}
      >
        Cleared: go on
      </Button>
    </>
  );
}

/** Every stop not yet cleared, each with its rescue card. */
export function StopPart() {
  const { standing, visit, open, nameOf, ask } = useDossier();
  const plan = agreedPlan(standing);
  const stops = visit?.stops.filter(({ cleared }) => cleared === null) ?? [];
  return stops.map(({ called }) => {
    const card = rescueCard(called.condition, plan);
    return (
      <section key={called.stop} className="sect rescue" aria-labelledby={`stop-${called.stop}`}>
        <div className="stepno" role="alert">
          ▲ Stopped <When at={called.when} /> by {nameOf(called.by)}: {called.condition} {called.note}
        </div>
        <h2 id={`stop-${called.stop}`}>{card.title}</h2>
        <ol className="rescue-steps">
          {card.do.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ol>
        <p>
          <b>Never: {card.never.join(', ')}.</b>
        </p>
        <p className="why">{sourceWords(card.source)}</p>
        {open && (
          <>
            <ClearPart stop={called.stop} />
            <Button tone="ghost" wide onPress={() => ask({ kind: 'incident' })}>
              Report an incident
            </Button>
          </>
        )}
      </section>
    );
  });
}
