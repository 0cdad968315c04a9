import { useEffect, useRef } from 'react';
import { type PlanStep, stopWords, type WashPlan } from '../../core/wash/index.ts';
import { agreedPlan, clockStops, stopSaid } from '../../dossier/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { sourceWords } from '../dossier/limitWords.ts';
import { useField, useForm } from '../dossier/useForm.ts';
import { ringBell } from '../kit/bell.ts';
import { Button, Choice, newId, PassageField, ProblemNotice, Sheet, When } from '../kit/index.ts';
import { everyStop, rescueCard } from './rescue.ts';

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
  const likely = everyStop.filter((words) => ofStep.includes(words));
  const options = [...likely, ...everyStop.filter((words) => !likely.includes(words))];
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

/** What mostly ends a stop, for hands that do not type. */
const clearings: readonly string[] = [
  'The card was followed; the next readings are fine.',
  'The reading was wrong and was taken again.',
  'The wash ends here: rinsed and extracted.',
];

function ClearPart({ stop }: { readonly stop: string }) {
  const { form, act, isBusy, problem } = useForm(`clear/${stop}`);
  const [how, setHow] = useField(form, 'how', '');
  return (
    <>
      <Choice
        label="How it was resolved"
        columns={1}
        options={clearings.map((value) => ({ value, words: value }))}
        value={clearings.includes(how) ? how : null}
        onChange={setHow}
      />
      <PassageField label="In your own words" value={how} onChange={setHow} />
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

/** What to do, in order, and what never. */
function RescueSteps({ condition, plan }: { readonly condition: string; readonly plan: WashPlan | null }) {
  const card = rescueCard(condition, plan);
  return (
    <>
      <ol className="rescue-steps">
        {card.do.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ol>
      <p>
        <b>Never: {card.never.join(', ')}.</b>
      </p>
      <p className="why">{sourceWords(card.source)}</p>
    </>
  );
}

/** Stops that the clock or a machine raises; each stands until its cause has gone. */
function ClockStops() {
  const { standing, settings, now } = useDossier();
  const plan = agreedPlan(standing);
  return clockStops(standing, settings, now).map(({ condition, since }) => (
    <section
      key={condition}
      className="sect rescue"
      aria-labelledby={`clock-${condition.replaceAll(' ', '-')}`}
    >
      <div className="stepno" role="alert">
        ▲ {stopWords(condition)} Wet since <When at={since} />.
      </div>
      <h2 id={`clock-${condition.replaceAll(' ', '-')}`}>{rescueCard(condition, plan).title}</h2>
      <RescueSteps condition={condition} plan={plan} />
    </section>
  ));
}

/** Every stop that holds, each with its rescue card; one that comes while the page is open is brought into view. */
export function StopPart() {
  const { standing, visit, settings, now } = useDossier();
  const called = visit?.stops.filter(({ cleared }) => cleared === null).map(({ called: { stop } }) => stop);
  const byClock = clockStops(standing, settings, now).map(({ condition }) => condition);
  const held = [...(called ?? []), ...byClock];
  const known = useRef<readonly string[]>(held);
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const isNew = held.some((stop) => !known.current.includes(stop));
    known.current = held;
    if (!isNew) return;
    place.current?.scrollIntoView({ block: 'start' });
    ringBell();
  });
  return (
    <div ref={place}>
      <ClockStops />
      <CalledStops />
    </div>
  );
}

function CalledStops() {
  const { standing, visit, settings, open, nameOf, ask } = useDossier();
  const plan = agreedPlan(standing);
  const stops = visit?.stops.filter(({ cleared }) => cleared === null) ?? [];
  return stops.map(({ called }) => {
    const card = rescueCard(called.condition, plan);
    return (
      <section key={called.stop} className="sect rescue" aria-labelledby={`stop-${called.stop}`}>
        <div className="stepno" role="alert">
          ▲ Stopped <When at={called.when} />{' '}
          {called.raisedBy === undefined ? `by ${nameOf(called.by)}` : `by a reading of ${nameOf(called.by)}`}
          : {stopSaid(called, settings.units)} {called.note}
        </div>
        <h2 id={`stop-${called.stop}`}>{card.title}</h2>
        <RescueSteps condition={called.condition} plan={plan} />
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
