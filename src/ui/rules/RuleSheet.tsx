import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { RulePreviewAnswer } from '../../contract/index.ts';
import {
  judgeRuleChange,
  type RuleEntry,
  type RuleGroup,
  ruleEntryAt,
  shippedRulebook,
} from '../../core/wash/index.ts';
import { call, type ShownProblem, useSettings } from '../call/index.ts';
import { Button, LineField, Notice, PassageField, ProblemNotice, Sheet } from '../kit/index.ts';
import { RuleEffect } from './RuleEffect.tsx';
import { RuleField } from './RuleField.tsx';
import { ruleName, ruleValue } from './ruleWords.ts';

interface SheetProps {
  readonly edited: RuleEntry | 'own mixture';
  readonly onClose: () => void;
}

/** Groups that say how the floor is watched; a plan names its rulebook, and they hold for its work. */
const floorGroups: readonly RuleGroup[] = ['stop condition', 'rinse', 'flow', 'residue'];

const entryOf = (edited: SheetProps['edited'], name: string): RuleEntry | null =>
  edited === 'own mixture' ? ruleEntryAt(shippedRulebook, `mixtures/+${name}`) : edited;

/** Changes one value: the value, what it would do to the rugs in the house, why, and only then the record. */
export function RuleSheet({ edited, onClose }: SheetProps) {
  const cache = useQueryClient();
  const { ruleChanges = [] } = useSettings();
  const [name, setName] = useState('');
  const [value, setValue] = useState<unknown>(edited === 'own mixture' ? null : firstValue(edited));
  const [why, setWhy] = useState('');
  const [effect, setEffect] = useState<RulePreviewAnswer | null>(null);
  const [problem, setProblem] = useState<ShownProblem | null>(null);
  const [isBusy, setBusy] = useState(false);
  const entry = entryOf(edited, name.trim() === '' ? 'own' : name.trim());
  if (entry === null) return null;
  const address = entry.address;
  const judged = judgeRuleChange({ address, value });
  const isChanged = ruleChanges.some((one) => one.address === address);
  const delivered = ruleEntryAt(shippedRulebook, address)?.value ?? null;
  const isNamed = edited !== 'own mixture' || name.trim() !== '';
  const change = (next: unknown) => {
    setEffect(null);
    setProblem(null);
    setValue(next);
  };
  const send = async (path: string, body: object) => {
    setBusy(true);
    const answer = await call<RulePreviewAnswer>(path, { method: 'POST', body });
    setBusy(false);
    setProblem(answer.ok ? null : answer.problem);
    return answer.ok ? answer.value : null;
  };
  const look = async () => setEffect(await send('/api/rulebook/preview', { address, value }));
  const record = async () => {
    const recorded = await send('/api/rulebook', { address, value, why: why.trim() });
    if (recorded === null) return;
    await cache.invalidateQueries({ queryKey: ['state'] });
    onClose();
  };
  return (
    <Sheet title={edited === 'own mixture' ? 'Forbid a mixture' : entry.title} isOpen onClose={onClose}>
      <div className="form">
        {entry.because === '' ? null : <p>{entry.because}</p>}
        {edited === 'own mixture' ? (
          <LineField label="Name" value={name} onChange={setName} mostCharacters={80} isRequired />
        ) : (
          <p className="why">
            Delivered: {ruleValue(entry, delivered)}
            {entry.locked ? '. It may only be tightened.' : ''}
          </p>
        )}
        {value === null && isChanged ? (
          <Notice
            tone="plain"
            title={delivered === null ? 'Taken away' : `Back to ${ruleValue(entry, delivered)}`}
          />
        ) : (
          <RuleField entry={entry} value={value} onChange={change} />
        )}
        {isChanged && value !== null ? (
          <Button tone="ghost" onPress={() => change(null)}>
            {delivered === null ? 'Take it away' : 'Back to the delivered value'}
          </Button>
        ) : null}
        {!judged.ok && judged.problem.code === 'rule-looser-than-delivered' ? (
          <ProblemNotice problem={judged.problem} />
        ) : null}
        <ProblemNotice problem={problem} />
        {effect === null ? (
          <Button onPress={look} isDisabled={!judged.ok || !isNamed || isBusy}>
            {isBusy ? 'Planning every rug anew…' : 'See what it changes'}
          </Button>
        ) : (
          <>
            <RuleEffect effect={effect} isOfFloor={floorGroups.includes(entry.group)} />
            <PassageField
              label="Why?"
              hint={`Kept with your name: ${ruleName(entry)} changes from now on.`}
              value={why}
              onChange={setWhy}
              rows={2}
              isRequired
            />
            <Button onPress={record} isDisabled={why.trim() === '' || isBusy}>
              {isBusy ? 'Recording…' : 'Record the change'}
            </Button>
          </>
        )}
      </div>
    </Sheet>
  );
}

/** What the sheet opens with: the value that holds, or the first that the form offers. */
const firstValue = ({ form, value }: RuleEntry): unknown =>
  value === null && form.kind === 'words' ? (form.options[0] ?? null) : value;
