import type { PlanStep } from '../../core/wash/index.ts';
import { stepId } from '../../dossier/index.ts';
import { rangeText } from '../../text/amountText.ts';
import { useShelf } from '../call/index.ts';
import { nothingTyped, useField, useForm } from '../dossier/useForm.ts';
import { Button, LineField, PassageField, ProblemNotice, Sheet } from '../kit/index.ts';
import { useBathAcid, useMix } from './MixPart.tsx';
import { ReadingPad, type Slot, type Typed, valueIn } from './ReadingPad.tsx';

/** Ends a step with what it took from the shelf, on large keys; the lot is the one the step was mixed from. */
export function FinishSheet({ step, onClose }: { readonly step: PlanStep; readonly onClose: () => void }) {
  const { form, act, isBusy, problem } = useForm(`finish/${stepId(step)}`, onClose);
  const [lot, setLot] = useField(form, 'lot', '');
  const [typed, setTyped] = useField<Typed<string>>(form, 'taken', nothingTyped);
  const [note, setNote] = useField(form, 'note', '');
  const { standing } = useShelf();
  const acid = useBathAcid(step);
  const lines = [...(useMix(step)?.lines ?? []), ...(acid === null ? [] : [acid.line])];
  const taken = lines.flatMap(({ product, lot: from, amount }) => {
    if (product === null || from === null) return [];
    const kept = standing?.agents.find(({ agent }) => agent === product.id)?.unit ?? 'g';
    const aim = amount === null ? '' : `${rangeText(amount.least, amount.most, amount.unit)}, `;
    const slot: Slot<string> = {
      ...{ key: product.id, name: `Taken of ${product.name}`, unit: amount?.unit ?? kept },
      ...{ least: 0, most: 1_000_000, aim: `${aim}lot ${from}; the shelf falls by it` },
    };
    return [{ slot, from }];
  });
  const slots = taken.map(({ slot }) => slot);
  const impossible = slots.some((slot) => (typed[slot.key] ?? '') !== '' && valueIn(slot, typed) === null);
  const used = taken.flatMap(({ slot, from }) => {
    const amount = valueIn(slot, typed);
    return amount === null || amount === 0 ? [] : [{ agent: slot.key, lot: from, amount }];
  });
  return (
    <Sheet title={`Finish: ${step.kind}`} isOpen onClose={onClose}>
      <div className="wash">
        {step.log.length > 0 && <p className="why">To be logged: {step.log.join(', ')}.</p>}
        {slots.length > 0 ? (
          <ReadingPad slots={slots} typed={typed} onChange={setTyped} />
        ) : (
          <LineField label="Lot of the agent" value={lot} onChange={setLot} hint="from the canister" />
        )}
        <PassageField label="Note" value={note} onChange={setNote} />
        <ProblemNotice problem={problem} />
        <Button
          wide
          isDisabled={isBusy || impossible}
          onPress={() =>
            act({
              type: 'StepDone',
              step: stepId(step),
              ...(lot.trim() === '' ? {} : { lot: lot.trim() }),
              ...(note.trim() === '' ? {} : { note: note.trim() }),
              ...(used.length === 0 ? {} : { used }),
            })
          }
        >
          Done
        </Button>
      </div>
    </Sheet>
  );
}
