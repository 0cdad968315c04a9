import { constructions, fibres, latexStates, routes } from '../../core/wash/index.ts';
import { Choice, NumberFields, type NumberOf, Picker, Section } from '../kit/index.ts';
import { hasBacking, type TypedFacts } from './typedFacts.ts';

export interface FactsProps {
  readonly typed: TypedFacts;
  readonly change: (changed: Partial<TypedFacts>) => void;
}

const wordFor = <Value extends string>(values: readonly Value[], word: string): Value | undefined =>
  values.find((value) => value === word);

const sideRange = { unit: 'cm', least: 10, most: 3000, isRequired: true } as const;

const sizeFields: readonly NumberOf<
  'pileHeightMm' | 'lengthCm' | 'widthCm' | 'dryMassKg' | 'expectedDryingHours'
>[] = [
  { name: 'pileHeightMm', label: 'Pile height', unit: 'mm', least: 0, most: 150 },
  { name: 'lengthCm', label: 'Length', ...sideRange },
  { name: 'widthCm', label: 'Width', ...sideRange },
  { name: 'dryMassKg', label: 'Dry mass', unit: 'kg', least: 0.05, most: 500 },
  {
    name: 'expectedDryingHours',
    label: 'Hours until dry',
    ...{ unit: 'h', least: 1, most: 1000, hint: 'Your own estimate, from first wetting.' },
  },
];

/** What the rug is made of, and how large it is. */
export function RugFields({ typed, change }: FactsProps) {
  const fibrePicker = (label: string, field: 'pile' | 'warp' | 'weft' | 'backing') => (
    <Picker
      label={label}
      options={fibres}
      value={typed[field]}
      onChange={(word) => change({ [field]: wordFor(fibres, word) ?? 'unknown' })}
    />
  );
  return (
    <Section title="The rug">
      <div className="form">
        <Choice
          label="Route"
          options={routes.map((route) => ({ value: route, words: route }))}
          value={typed.route}
          onChange={(route) => change({ route })}
        />
        <Picker
          label="Construction"
          options={constructions}
          value={typed.construction}
          onChange={(word) => change({ construction: wordFor(constructions, word) ?? 'unknown' })}
        />
        {typed.construction === 'tufted' ? (
          <Choice
            label="Latex on the back"
            columns={3}
            options={latexStates.map((latex) => ({ value: latex, words: latex }))}
            value={typed.latex}
            onChange={(latex) => change({ latex })}
          />
        ) : null}
        <div className="pad">
          {fibrePicker('Pile', 'pile')}
          {fibrePicker('Warp', 'warp')}
          {fibrePicker('Weft', 'weft')}
          {hasBacking(typed.construction) ? fibrePicker('Cloth behind it', 'backing') : null}
          <NumberFields
            fields={sizeFields}
            typed={typed}
            onChange={(name, value) => change({ [name]: value })}
          />
        </div>
      </div>
    </Section>
  );
}
