import type { PlanStep, SpottingCard } from '../../core/wash/index.ts';
import { type RugFactOf, stepId } from '../../dossier/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { noItems, nothingTyped, useField, useForm } from '../dossier/useForm.ts';
import { Button, Choice, PhotoTaker, ProblemNotice, Sheet } from '../kit/index.ts';
import { ReadingPad, type Slot, type Typed, valueIn, warmthIn } from './ReadingPad.tsx';

type Outcome = RugFactOf<'SpotTreated'>['outcome'];

const outcomes: readonly { readonly value: Outcome; readonly words: string }[] = [
  { value: 'gone', words: 'Gone' },
  { value: 'lighter', words: 'Lighter' },
  { value: 'unchanged', words: 'Unchanged' },
  { value: 'harm', words: '▲ Harm: colour, pile or fibre changed' },
];

/** What came of a spotter; harm stops the wash by itself. */
export function SpotSheet(props: {
  readonly card: SpottingCard;
  /** The step of the plan it was laid in; absent for dry lifting. */
  readonly step: PlanStep | undefined;
  readonly startedAt: string | undefined;
  readonly onClose: () => void;
}) {
  const { card, step, startedAt, onClose } = props;
  const { settings, now } = useDossier();
  const { form, act, isBusy, problem } = useForm(`spot/${card.id}`, onClose);
  const [outcome, setOutcome] = useField<Outcome | null>(form, 'outcome', null);
  const [typed, setTyped] = useField<Typed<'ph' | 'temperature'>>(form, 'typed', nothingTyped);
  const [photos, setPhotos] = useField<readonly string[]>(form, 'photos', noItems);
  const slots: readonly Slot<'ph' | 'temperature'>[] = [
    { key: 'ph', name: 'pH used', unit: '', least: 0, most: 14 },
    { key: 'temperature', name: 'Liquid', ...warmthIn(settings.units, 0, 90) },
  ];
  const [ph, temperature] = slots.map((slot) => valueIn(slot, typed));
  const isWet = card.agents.length > 0;
  const minutes =
    startedAt === undefined ? null : Math.max(0, (Date.parse(now) - Date.parse(startedAt)) / 60_000);
  return (
    <Sheet title="What came of it?" isOpen onClose={onClose}>
      <div className="wash">
        <Choice
          label="The place looks"
          columns={2}
          options={outcomes}
          value={outcome}
          onChange={setOutcome}
        />
        {isWet && <ReadingPad slots={slots} typed={typed} onChange={setTyped} />}
        <PhotoTaker label="Photograph it" onTaken={({ photo }) => setPhotos([...photos, photo])} />
        <ProblemNotice problem={problem} />
        <Button
          wide
          tone={outcome === 'harm' ? 'stop' : 'act'}
          isDisabled={outcome === null || isBusy}
          onPress={() =>
            outcome !== null &&
            act({
              type: 'SpotTreated',
              mark: card.stain,
              golden: card.golden,
              agents: [...card.agents],
              ...(step === undefined ? {} : { step: stepId(step) }),
              ...(ph == null ? {} : { ph }),
              ...(temperature == null ? {} : { temperatureC: temperature }),
              ...(minutes === null ? {} : { minutes: Math.round(minutes * 10) / 10 }),
              outcome,
              photos: [...photos],
            })
          }
        >
          Record the outcome
        </Button>
      </div>
    </Sheet>
  );
}
