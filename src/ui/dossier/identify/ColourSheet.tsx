import { type ColourKind, colourKinds, type Dye, dyes } from '../../../core/wash/index.ts';
import { hasMarkedPlaces } from '../../../dossier/index.ts';
import { Button, Choice, LineField, newId, ProblemNotice, Sheet } from '../../kit/index.ts';
import { useDossier } from '../dossierView.ts';
import { useField, useForm } from '../useForm.ts';
import { PickColour } from './PickColour.tsx';

const dyeHints: { readonly [D in Dye]?: string } = {
  natural: 'madder, weld, cochineal, oak …',
  indigo: 'natural or synthetic',
  acid: 'usual on wool since about 1880',
  chrome: 'usual since about 1920',
  unknown: 'the most sensitive counts',
};

type Answer = 'yes' | 'no' | 'not known';
const answerOf = (value: boolean | undefined): Answer | null =>
  value === undefined ? null : value ? 'yes' : 'no';

function YesNo(props: {
  readonly label: string;
  readonly hint: string;
  readonly value: Answer | null;
  readonly onChange: (value: Answer) => void;
}) {
  return (
    <Choice
      columns={3}
      options={[
        { value: 'yes', words: 'Yes' },
        { value: 'no', words: 'No' },
        { value: 'not known', words: 'Not known', hint: 'counts as yes' },
      ]}
      {...props}
    />
  );
}

/** Names one colour, or says it anew. */
export function ColourSheet({
  colour,
  on = 'field colour',
  onClose,
}: {
  readonly colour: string | null;
  /** What a new one is on. */
  readonly on?: ColourKind | undefined;
  readonly onClose: () => void;
}) {
  const { standing } = useDossier();
  const before = standing.colours.find((known) => known.colour === colour);
  const { form, act, isBusy, problem } = useForm(`colour/${colour ?? `new ${on}`}`, onClose);
  const [name, setName] = useField(form, 'name', before?.name ?? '');
  const [kind, setKind] = useField<ColourKind | null>(form, 'kind', before?.kind ?? on);
  const [dyeClass, setDyeClass] = useField<Dye | null>(form, 'dyeClass', before?.dyeClass ?? null);
  const [light, setLight] = useField<Answer | null>(form, 'light', answerOf(before?.besideLightField));
  const [urine, setUrine] = useField<Answer | null>(form, 'urine', answerOf(before?.atUrinePlace));
  const [looks, setLooks] = useField<string | undefined>(form, 'looks', before?.looks);
  const markedFound = hasMarkedPlaces(standing);
  const taken = standing.colours.some(
    (known) => known.colour !== colour && known.name.toLowerCase() === name.trim().toLowerCase(),
  );
  const record = () => {
    if (kind === null) return;
    act({
      type: 'ColoursNamed',
      colours: [
        {
          colour: colour ?? newId(),
          name: name.trim(),
          kind,
          dyeClass: dyeClass ?? 'unknown',
          ...(light === 'yes' || light === 'no' ? { besideLightField: light === 'yes' } : {}),
          ...(urine === 'yes' || urine === 'no' ? { atUrinePlace: urine === 'yes' } : {}),
          ...(looks === undefined ? {} : { looks }),
        },
      ],
    });
  };
  return (
    <Sheet title={before === undefined ? 'Name a colour' : before.name} isOpen onClose={onClose}>
      <LineField
        label="Name"
        value={name}
        onChange={setName}
        isRequired
        hint="as you would call it at the bench: red, field"
        problem={
          taken ? `“${name.trim()}” is already a colour of this rug. Give this one another name.` : null
        }
      />
      <PickColour value={looks} onChange={setLooks} />
      <Choice
        label="What it is on"
        columns={3}
        options={colourKinds.map((value) => ({ value, words: value }))}
        value={kind}
        onChange={setKind}
      />
      <Choice
        label="Dye class"
        columns={3}
        options={dyes.map((value) => ({ value, words: value, hint: dyeHints[value] }))}
        value={dyeClass}
        onChange={setDyeClass}
        hint="Without evidence choose unknown."
      />
      <YesNo
        label="Does a light colour touch it?"
        hint="A run would show there first."
        value={light}
        onChange={setLight}
      />
      {markedFound && (
        <YesNo
          label="Does it lie where urine, a water mark or an old run is?"
          hint="Then it is tested there as well."
          value={urine}
          onChange={setUrine}
        />
      )}
      {problem && <ProblemNotice problem={problem} />}
      <Button wide isDisabled={name.trim() === '' || taken || kind === null || isBusy} onPress={record}>
        Record
      </Button>
    </Sheet>
  );
}
