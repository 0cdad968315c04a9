import { useState } from 'react';
import { hazardStatements, type SignalWord, signalWords } from '../../core/chemistry/index.ts';
import { type Agent, agents } from '../../core/wash/index.ts';
import type { ShelfFactOf, ShelvedAgent } from '../../dossier/index.ts';
import { useSettings } from '../call/index.ts';
import {
  Button,
  Choice,
  LineField,
  type Money,
  MoneyField,
  NumberField,
  newId,
  ProblemNotice,
  Sheet,
} from '../kit/index.ts';
import { type Part, PartFields } from './PartFields.tsx';
import { PickedList } from './PickedList.tsx';
import { useSheet } from './useSheet.ts';

const firstPart: Part = { kind: 'acid', value: undefined, unit: '% w/w' };
/** A constituent keeps its fields while others are added. */
const asRow = (part: Part) => ({ row: newId(), part });
const uses = agents.filter((agent) => agent !== 'water').map((value) => ({ value, words: value }));
const hazardOptions = hazardStatements.map(({ code, words }) => ({
  value: code,
  words: `${words} (${code})`,
}));
const signalOptions: readonly { readonly value: SignalWord | 'not known'; readonly words: string }[] = [
  ...signalWords.map((value) => ({ value, words: value === 'none' ? 'No signal word' : value })),
  { value: 'not known', words: 'Not known yet' },
];
const isAddress = (text: string) => text === '' || /^https?:\/\/\S+$/.test(text);
/** A strength whose field was opened and left empty is asked for. */
const isEmpty = (part: Part) => 'value' in part && part.value === undefined;

/** A product as its label and safety data sheet describe it. */
export function AgentSheet({
  known,
  onClose,
}: {
  readonly known: ShelvedAgent | null;
  readonly onClose: () => void;
}) {
  const { send, problem, isBusy } = useSheet(onClose);
  const settings = useSettings();
  const [name, setName] = useState(known?.name ?? '');
  const [serves, setServes] = useState<readonly Agent[]>(known?.serves ?? []);
  const [unit, setUnit] = useState<'g' | 'mL'>(known?.unit ?? 'g');
  const [density, setDensity] = useState<number | null>(known?.densityGPerMl ?? null);
  const [rows, setRows] = useState(() => (known?.parts ?? [firstPart]).map(asRow));
  const [ph, setPh] = useState<number | null>(known?.ph?.value ?? null);
  const [phAt, setPhAt] = useState<number | null>(known?.ph?.gramsPerLitre ?? null);
  const [signal, setSignal] = useState<SignalWord | 'not known'>(known?.signal ?? 'not known');
  const [hazards, setHazards] = useState<readonly string[]>(known?.hazards ?? []);
  const [sheet, setSheet] = useState(known?.safetySheet ?? '');
  const [supplier, setSupplier] = useState(known?.supplier ?? '');
  const [price, setPrice] = useState<Money | null>(known?.price ?? null);
  const [pack, setPack] = useState<number | null>(known?.pack ?? null);
  const [reorder, setReorder] = useState<number | null>(known?.reorderBelow ?? null);
  const parts = rows.map(({ part }) => part);
  const setPart = (row: string, part: Part) =>
    setRows(rows.map((one) => (one.row === row ? { row, part } : one)));
  const isHalfPh = (ph === null) !== (phAt === null);
  const isPackless = price !== null && pack === null;
  const isPourless = unit === 'mL' && density === null;
  const missing = [
    ...(name.trim() === '' ? ['its name'] : []),
    ...(isPourless ? ['its density'] : []),
    ...(parts.some(isEmpty) ? ['the strength of each constituent, or that it is not known'] : []),
    ...(isHalfPh ? ['the pH together with its dilution'] : []),
    ...(isPackless ? ['what a pack holds, beside its price'] : []),
    ...(isAddress(sheet.trim()) ? [] : ['an address that begins with https://']),
  ];
  const fact = (): ShelfFactOf<'AgentShelved'> => ({
    ...{ type: 'AgentShelved', agent: known?.agent ?? newId(), name: name.trim() },
    ...{ serves, parts, unit, hazards },
    ...(density === null ? {} : { densityGPerMl: density }),
    ...(ph === null || phAt === null ? {} : { ph: { value: ph, gramsPerLitre: phAt } }),
    ...(signal === 'not known' ? {} : { signal }),
    ...(sheet.trim() === '' ? {} : { safetySheet: sheet.trim() }),
    ...(supplier.trim() === '' ? {} : { supplier: supplier.trim() }),
    ...(price === null ? {} : { price }),
    ...(pack === null ? {} : { pack }),
    ...(reorder === null ? {} : { reorderBelow: reorder }),
  });
  return (
    <Sheet title={known === null ? 'Put a product on the shelf' : known.name} isOpen onClose={onClose}>
      <div className="form">
        <h3>What it is</h3>
        <LineField label="Name" hint="as on its label" value={name} onChange={setName} isRequired />
        <PickedList
          label="In the plans it serves as"
          add="Add a use"
          none="No use yet: no plan reckons with it."
          options={uses}
          value={serves}
          onChange={setServes}
        />
        <Choice
          label="Measured out in"
          options={[
            { value: 'g', words: 'grams', hint: 'a powder' },
            { value: 'mL', words: 'millilitres', hint: 'a liquid, with its density' },
          ]}
          value={unit}
          onChange={setUnit}
        />
        <NumberField
          label="Density"
          unit="g/mL"
          least={0.3}
          most={3}
          value={density}
          onChange={setDensity}
          isRequired={unit === 'mL'}
        />
        <h3>What is in it</h3>
        <p className="why">
          As section 3 of its safety data sheet states it. Fragrance and water are left out.
        </p>
        {rows.map(({ row, part }, index) => (
          <PartFields
            key={row}
            at={index + 1}
            part={part}
            onChange={(next) => setPart(row, next)}
            onRemove={rows.length === 1 ? null : () => setRows(rows.filter((one) => one.row !== row))}
          />
        ))}
        <Button
          tone="ghost"
          isDisabled={parts.length >= 8}
          onPress={() => setRows([...rows, asRow(firstPart)])}
        >
          Another constituent
        </Button>
        <NumberField label="pH of a dilution" unit="pH" least={0} most={14} value={ph} onChange={setPh} />
        <NumberField
          label="The dilution holds"
          unit="g/L"
          least={0}
          most={1000}
          hint="10 g/L is 1 %; 1000 g/L is the product itself."
          value={phAt}
          onChange={setPhAt}
        />
        <h3>What it can do to you</h3>
        <Choice label="Signal word" options={signalOptions} value={signal} onChange={setSignal} />
        <PickedList
          label="Hazard statements"
          add="Add a hazard statement"
          none="None is written down."
          options={hazardOptions}
          value={hazards}
          onChange={setHazards}
        />
        <LineField
          label="Address of its safety data sheet"
          value={sheet}
          onChange={setSheet}
          problem={isAddress(sheet.trim()) ? null : `“${sheet}” is no address. It begins with https://.`}
        />
        <h3>Buying it</h3>
        <LineField label="Supplier" value={supplier} onChange={setSupplier} />
        <MoneyField
          label="Price of a pack"
          currency={known?.price?.currency ?? settings.currency}
          value={price}
          onChange={setPrice}
        />
        <NumberField
          label="A pack holds"
          unit={unit}
          least={0.1}
          most={1_000_000}
          value={pack}
          onChange={setPack}
          isRequired={price !== null}
        />
        <NumberField
          label="Order when less is left than"
          unit={unit}
          least={0}
          most={1_000_000}
          value={reorder}
          onChange={setReorder}
        />
        {missing.length === 0 ? null : <p className="why">Still needed: {missing.join('; ')}.</p>}
        <ProblemNotice problem={problem} />
        <Button wide isDisabled={isBusy || missing.length > 0} onPress={() => send(fact())}>
          Record the product
        </Button>
      </div>
    </Sheet>
  );
}
