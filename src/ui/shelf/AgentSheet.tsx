import { useState } from 'react';
import {
  type AgentKind,
  agentKinds,
  chemicalAgents,
  hazardStatements,
  type SignalWord,
  signalWords,
  strengthUnits,
} from '../../core/chemistry/index.ts';
import { type Agent, agents } from '../../core/wash/index.ts';
import type { ShelfFactOf, ShelvedAgent } from '../../dossier/index.ts';
import {
  Button,
  Choice,
  LineField,
  ManyChoice,
  NumberField,
  newId,
  Picker,
  ProblemNotice,
  Sheet,
} from '../kit/index.ts';
import { useSheet } from './useSheet.ts';

type Part = ShelfFactOf<'AgentShelved'>['parts'][number];
const firstPart: Part = { kind: 'acid', value: 100, unit: '% w/w' };
/** A constituent keeps its fields while others are added. */
const asRow = (part: Part) => ({ row: newId(), part });
const chosen = <Word extends string>(words: readonly Word[]) =>
  words.map((value) => ({ value, words: value }));

/** A product as its label and safety data sheet describe it. */
export function AgentSheet({
  known,
  onClose,
}: {
  readonly known: ShelvedAgent | null;
  readonly onClose: () => void;
}) {
  const { send, problem, isBusy } = useSheet(onClose);
  const [name, setName] = useState(known?.name ?? '');
  const [serves, setServes] = useState<readonly Agent[]>(known?.serves ?? []);
  const [unit, setUnit] = useState<'g' | 'mL'>(known?.unit ?? 'g');
  const [density, setDensity] = useState<number | null>(known?.densityGPerMl ?? null);
  const [rows, setRows] = useState(() => (known?.parts ?? [firstPart]).map(asRow));
  const parts = rows.map(({ part }) => part);
  const [signal, setSignal] = useState<SignalWord>(known?.signal ?? 'none');
  const [hazards, setHazards] = useState<readonly string[]>(known?.hazards ?? []);
  const [sheet, setSheet] = useState(known?.safetySheet ?? '');
  const [reorder, setReorder] = useState<number | null>(known?.reorderBelow ?? null);
  const isAddress = sheet.trim() === '' || /^https?:\/\/\S+$/.test(sheet.trim());
  const setPart = (row: string, part: Part) =>
    setRows(rows.map((one) => (one.row === row ? { row, part } : one)));
  const fact = (): ShelfFactOf<'AgentShelved'> => ({
    ...{ type: 'AgentShelved', agent: known?.agent ?? newId(), name: name.trim() },
    ...{ serves, parts, unit, signal, hazards },
    ...(density === null ? {} : { densityGPerMl: density }),
    ...(known?.ph === undefined ? {} : { ph: known.ph }),
    ...(known?.supplier === undefined ? {} : { supplier: known.supplier }),
    ...(known?.price === undefined ? {} : { price: known.price }),
    ...(sheet.trim() === '' ? {} : { safetySheet: sheet.trim() }),
    ...(reorder === null ? {} : { reorderBelow: reorder }),
  });
  return (
    <Sheet title={known === null ? 'Put a product on the shelf' : known.name} isOpen onClose={onClose}>
      <div className="form">
        <LineField label="Name" hint="as on its label" value={name} onChange={setName} isRequired />
        <Choice
          label="Measured out in"
          options={[
            { value: 'g', words: 'grams', hint: 'a powder' },
            { value: 'mL', words: 'millilitres', hint: 'a liquid, with its density' },
          ]}
          value={unit}
          onChange={setUnit}
        />
        <NumberField label="Density" unit="g/mL" least={0.3} most={3} value={density} onChange={setDensity} />
        {rows.map(({ row, part }, at) => (
          <PartFields key={row} at={at} part={part} onChange={(next) => setPart(row, next)} />
        ))}
        <Button
          tone="ghost"
          isDisabled={parts.length >= 8}
          onPress={() => setRows([...rows, asRow(firstPart)])}
        >
          Another constituent
        </Button>
        <Choice
          label="Signal word"
          columns={3}
          options={chosen(signalWords)}
          value={signal}
          onChange={setSignal}
        />
        <ManyChoice
          label="Hazards on its safety data sheet"
          options={hazardStatements.map(({ code, words }) => ({ value: code, words, hint: code }))}
          value={hazards}
          onChange={setHazards}
        />
        <LineField
          label="Address of its safety data sheet"
          value={sheet}
          onChange={setSheet}
          problem={isAddress ? null : `“${sheet}” is no address. It begins with https://.`}
        />
        <NumberField
          label="Order when less is left than"
          unit={unit}
          least={0}
          most={1_000_000}
          value={reorder}
          onChange={setReorder}
        />
        <ManyChoice
          label="In the plans it serves as"
          options={chosen(agents.filter((agent) => agent !== 'water'))}
          value={serves}
          onChange={setServes}
        />
        <ProblemNotice problem={problem} />
        <Button wide isDisabled={isBusy || name.trim() === '' || !isAddress} onPress={() => send(fact())}>
          Record the product
        </Button>
      </div>
    </Sheet>
  );
}

function PartFields(props: {
  readonly at: number;
  readonly part: Part;
  readonly onChange: (part: Part) => void;
}) {
  const { at, part, onChange } = props;
  const { chemical: _none, ...unnamed } = part;
  return (
    <>
      <Picker
        label={`Constituent ${at + 1}`}
        options={agentKinds}
        value={part.kind}
        onChange={(kind) => onChange({ ...part, kind: kind as AgentKind })}
      />
      <Picker
        label={`Chemical ${at + 1}`}
        any="not computed with"
        options={chemicalAgents.map(({ agent }) => agent)}
        value={part.chemical ?? ''}
        onChange={(chemical) => onChange(chemical === '' ? unnamed : { ...part, chemical })}
      />
      <NumberField
        label={`Strength ${at + 1}`}
        unit={part.unit}
        least={0}
        most={part.unit === '% w/w' ? 100 : 3000}
        value={part.value}
        onChange={(value) => onChange({ ...part, value: value ?? 0 })}
      />
      <Choice
        label={`Strength ${at + 1} is in`}
        options={chosen(strengthUnits)}
        value={part.unit}
        onChange={(unit) => onChange({ ...part, unit } as Part)}
      />
    </>
  );
}
