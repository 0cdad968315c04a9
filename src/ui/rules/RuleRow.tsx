import { useState } from 'react';
import { type RuleEntry, ruleEntryAt, shippedRulebook } from '../../core/wash/index.ts';
import { axisNames, axisOrder, sourceWords } from '../dossier/limitWords.ts';
import { Button, Picker } from '../kit/index.ts';
import { type RuleRowShown, ruleName, ruleValue } from './ruleWords.ts';

interface RowProps {
  readonly row: RuleRowShown;
  readonly isOpen: boolean;
  readonly changed: ReadonlySet<string>;
  readonly edit: ((entry: RuleEntry) => void) | null;
}

/** One row of the rulebook, folded: its reason, its values, where it comes from. */
export function RuleRow({ row, isOpen, changed, edit }: RowProps) {
  const entries = row.parts.flatMap((part) => part.entries);
  const isChanged = entries.some(({ address }) => changed.has(address));
  const isNumbered = row.group === 'rule' && row.title !== row.row;
  return (
    <details className="rule" open={isOpen}>
      <summary>
        {isNumbered ? <b className="ruleId">{row.row}</b> : null} {row.title}
        {isChanged ? <span className="changedHere"> ◆ changed here</span> : null}
      </summary>
      {row.parts.map(({ because, entries: held }) => (
        <div key={because} className="rulePart">
          {because === '' ? null : <p>{because}</p>}
          <ul className="ruleValues">
            {held
              // A rule that sets no limit says only its reason, which stands above.
              .filter(({ form, value }) => form.kind !== 'fixed' || value !== because)
              .map((entry) => (
                <Value key={entry.address} entry={entry} isChanged={changed.has(entry.address)} edit={edit} />
              ))}
          </ul>
          {edit !== null && (row.group === 'rule' || row.group === 'fibre' || row.group === 'dye class') ? (
            <AddLimit held={held} edit={edit} />
          ) : null}
        </div>
      ))}
      <p className="why">
        {sourceWords(row.source)}
        {row.where === undefined ? '' : `, ${row.where}`}
      </p>
    </details>
  );
}

function Value(props: {
  readonly entry: RuleEntry;
  readonly isChanged: boolean;
  readonly edit: RowProps['edit'];
}) {
  const { entry, isChanged, edit } = props;
  const delivered = isChanged ? (ruleEntryAt(shippedRulebook, entry.address)?.value ?? null) : null;
  const isLone = ruleName(entry) === entry.title;
  return (
    <li>
      <span>
        {isLone ? null : <span className="why">{ruleName(entry)}: </span>}
        {entry.form.kind === 'fixed' ? String(entry.value) : <b>{ruleValue(entry, entry.value)}</b>}
        {isChanged ? (
          <span className="why"> workshop setting; delivered: {ruleValue(entry, delivered)}</span>
        ) : null}
        {entry.locked && entry.form.kind !== 'fixed' ? (
          <span className="why"> only ever tightened</span>
        ) : null}
      </span>
      {edit === null || entry.form.kind === 'fixed' ? null : (
        <Button tone="ghost" label={`Change ${entry.title}: ${ruleName(entry)}`} onPress={() => edit(entry)}>
          Change
        </Button>
      )}
    </li>
  );
}

/** A limit the row does not set yet. */
function AddLimit({
  held,
  edit,
}: {
  readonly held: readonly RuleEntry[];
  readonly edit: (entry: RuleEntry) => void;
}) {
  const [axis, setAxis] = useState('');
  const [first] = held;
  if (first === undefined) return null;
  const base = first.address.slice(0, first.address.lastIndexOf('/'));
  const free = axisOrder.filter((one) => !held.some(({ name }) => name === one));
  const entry =
    axis === '' || first.form.kind === 'fixed' ? null : ruleEntryAt(shippedRulebook, `${base}/${axis}`);
  if (first.form.kind === 'fixed') return null;
  return (
    <div className="addLimit">
      <Picker
        label="Add a limit"
        any="Choose what it limits"
        options={free.map((value) => ({ value, words: axisNames[value] }))}
        value={axis}
        onChange={setAxis}
      />
      {entry === null ? null : (
        <Button tone="ghost" onPress={() => edit(entry)}>
          Set it
        </Button>
      )}
    </div>
  );
}
