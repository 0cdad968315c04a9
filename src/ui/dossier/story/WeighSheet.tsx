import { wetSince } from '../../../dossier/index.ts';
import { Button, Check, Notice, NumberField, ProblemNotice, Sheet } from '../../kit/index.ts';
import { AirTemperatureField, MassField } from '../../receive/measureFields.tsx';
import { useDossier } from '../dossierView.ts';
import { useField, useForm } from '../useForm.ts';

/** The mass with the air it was taken in; without the air it means little. */
export function WeighSheet({ onClose }: { readonly onClose: () => void }) {
  const { visit, settings } = useDossier();
  const { form, act, isBusy, problem } = useForm('weigh', onClose);
  const [massKg, setMass] = useField<number | null>(form, 'massKg', null);
  const [rh, setRh] = useField<number | null>(form, 'rh', null);
  const [airC, setAirC] = useField<number | null>(form, 'airC', null);
  const [rested, setRested] = useField(form, 'rested', false);
  const [unusual, setUnusual] = useField(form, 'unusual', false);
  const dusted = visit !== null && visit.dustings.length > 0;
  const wasWetted = visit !== null && wetSince(visit) !== null;
  const record = () => {
    if (massKg === null) return;
    act({
      type: 'RugWeighed',
      massKg,
      occasion: dusted ? 'after dusting' : 'intake',
      restedADay: rested,
      ...(rh === null ? {} : { airRh: rh / 100 }),
      ...(airC === null ? {} : { airC }),
      ...(unusual ? { confirmedUnusual: true } : {}),
    });
  };
  return (
    <Sheet title="Weigh it dry" isOpen onClose={onClose}>
      <p className="why">
        Before any water: drying is measured against this. Wool weighs several per cent more in damp air, so
        the air is noted with it. Two people for a heavy rug.
      </p>
      <MassField label="Mass" units={settings.units} value={massKg} onChange={setMass} isRequired />
      <div className="pair">
        <NumberField
          label="Humidity of the room"
          unit="% RH"
          least={0}
          most={100}
          value={rh}
          onChange={setRh}
        />
        <AirTemperatureField label="Air" units={settings.units} value={airC} onChange={setAirC} />
      </div>
      <Check
        label="It has lain in this air for a day or more"
        hint="otherwise its dry mass is known to ±5 % only"
        isSelected={rested}
        onChange={setRested}
      />
      {wasWetted && (
        <Notice tone="stop" title="It was wetted in this visit.">
          <p>
            A weighing now is a drying reading: take it under “Wash and dry”, or its dry mass would be wrong.
          </p>
        </Notice>
      )}
      {problem && <ProblemNotice problem={problem} />}
      {problem?.code === 'mass-outside-band' && (
        <Check label="I weighed it again and this is its mass" isSelected={unusual} onChange={setUnusual} />
      )}
      <Button wide isDisabled={massKg === null || wasWetted || isBusy} onPress={record}>
        Record
      </Button>
    </Sheet>
  );
}
