import { colourKinds, dyes, grades, sides, testLiquids } from '../../core/wash/index.ts';
import {
  Button,
  Check,
  LineField,
  NumberFields,
  type NumberOf,
  newId,
  Picker,
  Section,
} from '../kit/index.ts';
import type { FactsProps } from './RugFields.tsx';
import { showsColourChange, type TypedColour, type TypedTest } from './typedFacts.ts';

const changedIn = <Item extends { readonly id: string }>(
  items: readonly Item[],
  next: Item,
): readonly Item[] => items.map((item) => (item.id === next.id ? next : item));

/** Every colour of the rug with the blots made of it. */
export function ColourFields({ typed, change }: FactsProps) {
  const { colours, tests } = typed;
  const addColour = () =>
    change({
      colours: [
        ...colours,
        { id: newId(), name: '', kind: 'field colour', dyeClass: 'unknown', besideLightField: true },
      ],
    });
  const addTest = (colour: string) =>
    change({
      tests: [
        ...tests,
        {
          id: newId(),
          colour,
          side: 'face',
          liquid: 'planned bath',
          grade: null,
          colourChange: null,
          ph: null,
          temperatureC: null,
          minutes: null,
        },
      ],
    });
  return (
    <Section title="Colours and their tests">
      {colours.length === 0 ? (
        <p className="lead">No colour is named yet, so no wet step is possible.</p>
      ) : null}
      {colours.map((colour) => (
        <div key={colour.id} className="part form">
          <ColourRow colour={colour} onChange={(next) => change({ colours: changedIn(colours, next) })} />
          {tests
            .filter((test) => test.colour === colour.id)
            .map((test) => (
              <TestRow
                key={test.id}
                test={test}
                onChange={(next) => change({ tests: changedIn(tests, next) })}
                onRemove={() => change({ tests: tests.filter(({ id }) => id !== test.id) })}
              />
            ))}
          <div className="actions">
            <Button tone="ghost" onPress={() => addTest(colour.id)}>
              Add a test of {colour.name === '' ? 'it' : colour.name}
            </Button>
            <Button
              tone="ghost"
              onPress={() =>
                change({
                  colours: colours.filter(({ id }) => id !== colour.id),
                  tests: tests.filter((test) => test.colour !== colour.id),
                })
              }
            >
              Take the colour away
            </Button>
          </div>
        </div>
      ))}
      <div className="actions">
        <Button tone="ghost" onPress={addColour}>
          Add a colour
        </Button>
      </div>
    </Section>
  );
}

function ColourRow(props: {
  readonly colour: TypedColour;
  readonly onChange: (colour: TypedColour) => void;
}) {
  const { colour, onChange } = props;
  return (
    <>
      <LineField label="Colour" value={colour.name} onChange={(name) => onChange({ ...colour, name })} />
      <Picker
        label="What it is"
        options={colourKinds}
        value={colour.kind}
        onChange={(word) =>
          onChange({ ...colour, kind: colourKinds.find((kind) => kind === word) ?? 'field colour' })
        }
      />
      <Picker
        label="Dye"
        options={dyes}
        value={colour.dyeClass}
        onChange={(word) => onChange({ ...colour, dyeClass: dyes.find((dye) => dye === word) ?? 'unknown' })}
      />
      <Check
        label="A light colour touches it"
        isSelected={colour.besideLightField}
        onChange={(besideLightField) => onChange({ ...colour, besideLightField })}
      />
    </>
  );
}

const madeFields: readonly NumberOf<'ph' | 'temperatureC' | 'minutes'>[] = [
  { name: 'ph', label: 'pH', unit: '', least: 0, most: 14 },
  { name: 'temperatureC', label: 'Temperature', unit: '°C', least: 0, most: 100 },
  { name: 'minutes', label: 'Time on the rug', unit: 'min', least: 0, most: 2000 },
];

function TestRow(props: {
  readonly test: TypedTest;
  readonly onChange: (test: TypedTest) => void;
  readonly onRemove: () => void;
}) {
  const { test, onChange } = props;
  return (
    <fieldset className="part bareSet">
      <legend className="stepno">{test.atUrinePlace === true ? 'Test at the urine place' : 'Test'}</legend>
      <div className="pad">
        <Picker
          label="Liquid"
          options={testLiquids}
          value={test.liquid}
          onChange={(word) => {
            // Another liquid holds other agents than the one the plan asked for.
            const { agents: _agents, strengthGPerL: _strength, ...rest } = test;
            onChange({ ...rest, liquid: testLiquids.find((liquid) => liquid === word) ?? test.liquid });
          }}
        />
        <Picker
          label="Side"
          options={sides}
          value={test.side}
          onChange={(word) => onChange({ ...test, side: sides.find((side) => side === word) ?? test.side })}
        />
        <Picker
          label="Staining of the white cloth"
          any="Not read yet"
          hint="1 strongest run, 5 none"
          options={grades}
          value={test.grade ?? ''}
          onChange={(word) => onChange({ ...test, grade: grades.find((grade) => grade === word) ?? null })}
        />
        {showsColourChange(test.liquid) ? (
          <Picker
            label="Change of the colour itself"
            any="Not read yet"
            hint="1 strongest change, 5 none"
            options={grades}
            value={test.colourChange ?? ''}
            onChange={(word) =>
              onChange({ ...test, colourChange: grades.find((grade) => grade === word) ?? null })
            }
          />
        ) : null}
        <NumberFields
          fields={madeFields}
          typed={test}
          onChange={(name, value) => onChange({ ...test, [name]: value })}
        />
      </div>
      <div className="actions">
        <Button tone="ghost" onPress={props.onRemove}>
          Take the test away
        </Button>
      </div>
    </fieldset>
  );
}
