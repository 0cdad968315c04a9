import { Button, Choice, NumberField, ProblemNotice, Sheet } from '../../kit/index.ts';
import { useDossier } from '../dossierView.ts';
import { useField, useForm } from '../useForm.ts';

/** A dusting pass with the soil it gave. */
export function DustSheet({ onClose }: { readonly onClose: () => void }) {
  const { visit, plan } = useDossier();
  const before = visit?.dustings ?? [];
  const { form, act, isBusy, problem } = useForm('dust', onClose);
  const [soilG, setSoil] = useField<number | null>(form, 'soilG', null);
  const [minutes, setMinutes] = useField<number | null>(form, 'minutes', null);
  const [side, setSide] = useField<'face' | 'back' | null>(form, 'side', 'back');
  const first = before[0]?.soilG;
  const forbidden = plan.ok
    ? plan.value.bounds.forbiddenActs.filter((one) => one === 'beat' || one === 'machine dusting')
    : [];
  return (
    <Sheet title={`Dusting, pass ${before.length + 1}`} isOpen onClose={onClose}>
      {forbidden.length > 0 && <p className="open-fact">Never on this rug: {forbidden.join(', ')}.</p>}
      <p className="why">
        Until a pass gives less than 5 % of the first (workshop setting)
        {first === undefined ? '' : `: below ${(first * 0.05).toFixed(0)} g`}. Dust mask; gloves and a
        respirator where old insecticide is possible.
      </p>
      <Choice
        label="Side"
        columns={2}
        options={[
          { value: 'back', words: 'Back' },
          { value: 'face', words: 'Face' },
        ]}
        value={side}
        onChange={setSide}
      />
      <div className="pair">
        <NumberField
          label="Soil"
          unit="g"
          least={0}
          most={500000}
          value={soilG}
          onChange={setSoil}
          isRequired
        />
        <NumberField label="Time" unit="min" least={0} most={600} value={minutes} onChange={setMinutes} />
      </div>
      {problem && <ProblemNotice problem={problem} />}
      <Button
        wide
        isDisabled={soilG === null || side === null || isBusy}
        onPress={() =>
          soilG !== null &&
          side !== null &&
          act({
            type: 'RugDusted',
            pass: before.length + 1,
            soilG,
            side,
            ...(minutes === null ? {} : { minutes }),
          })
        }
      >
        Record
      </Button>
    </Sheet>
  );
}
