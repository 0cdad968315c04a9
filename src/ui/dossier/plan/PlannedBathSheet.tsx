import { type Agent, agents } from '../../../core/wash/index.ts';
import { Button, LineField, ManyChoice, NumberField, newId, ProblemNotice, Sheet } from '../../kit/index.ts';
import { noItems, useField, useForm } from '../useForm.ts';

const options = agents.filter((agent) => agent !== 'water').map((agent) => ({ value: agent, words: agent }));

/** A bath the workshop means to mix: the plan says at once what it needs tested, or why it is not for this rug. */
export function PlannedBathSheet({ onClose }: { readonly onClose: () => void }) {
  const { form, act, isBusy, problem } = useForm('planned bath', onClose);
  const [purpose, setPurpose] = useField(form, 'purpose', '');
  const [chosen, setChosen] = useField<readonly Agent[]>(form, 'agents', noItems);
  const [ph, setPh] = useField<number | null>(form, 'ph', null);
  const keep = () =>
    act({
      ...{ type: 'BathPlanned', bath: newId(), purpose: purpose.trim(), agents: [...chosen] },
      ...(ph === null ? {} : { ph }),
    });
  return (
    <Sheet title="A bath of your own" isOpen onClose={onClose}>
      <div className="form">
        <p>
          For instance an alkaline second wash. Alkali asks for its challenge on every colour before any
          water; what this rug does not bear is refused.
        </p>
        <LineField label="What for" value={purpose} onChange={setPurpose} isRequired />
        <ManyChoice label="What is in it" options={options} value={chosen} onChange={setChosen} />
        <NumberField
          label="Its pH"
          unit="pH"
          least={0}
          most={14}
          hint="Computed at the bench (Mix), or measured in a litre of it. Not known counts as the worst."
          value={ph}
          onChange={setPh}
        />
        {problem && <ProblemNotice problem={problem} />}
        <Button wide isDisabled={purpose.trim() === '' || chosen.length === 0 || isBusy} onPress={keep}>
          Record
        </Button>
      </div>
    </Sheet>
  );
}
