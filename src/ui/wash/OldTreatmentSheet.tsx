import type { Agent } from '../../core/wash/index.ts';
import { stainClassOf } from '../../dossier/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { stainWords } from '../dossier/figures.ts';
import { noItems, useField, useForm } from '../dossier/useForm.ts';
import { Button, Choice, ManyChoice, PassageField, ProblemNotice, Sheet } from '../kit/index.ts';

interface HomeRemedy {
  readonly value: string;
  readonly words: string;
  readonly agents: readonly Agent[];
  readonly hint?: string;
}

/** What people lay on a stain before they bring the rug, in their words. What nobody knows may be any of it. */
const remedies: readonly HomeRemedy[] = [
  { value: 'chlorine', words: 'Chlorine bleach', agents: ['hypochlorite'] },
  { value: 'oxygen', words: 'Oxygen bleach', agents: ['percarbonate', 'hydrogen peroxide'] },
  { value: 'reducer', words: 'Colour remover', agents: ['metabisulfite', 'dithionite'], hint: 'a reducer' },
  { value: 'ammonia', words: 'Ammonia', agents: ['ammonia'], hint: 'also window cleaner' },
  { value: 'soda', words: 'Soda or strong soap', agents: ['sodium carbonate', 'alkaline detergent'] },
  { value: 'vinegar', words: 'Vinegar or lemon', agents: ['acetic acid', 'citric acid'] },
  { value: 'rust', words: 'Rust remover', agents: ['hydrofluoric or bifluoride rust remover'] },
  { value: 'spirit', words: 'Spirit or acetone', agents: ['alcohol', 'acetone'] },
  { value: 'solvent', words: 'Petrol or solvent', agents: ['flammable solvent'] },
  {
    value: 'unknown',
    words: 'Something, nobody knows what',
    agents: ['hypochlorite', 'percarbonate', 'metabisulfite', 'ammonia', 'acetic acid', 'flammable solvent'],
    hint: 'counts as the worst of these',
  },
];

const tellers = ['the client', 'smelt or seen here', 'an earlier report'] as const;
const wholeRug = 'the whole rug';

/** What others used on the rug before it came: it may still be in it. */
export function OldTreatmentSheet({ onClose }: { readonly onClose: () => void }) {
  const { standing } = useDossier();
  const { form, act, isBusy, problem } = useForm('old treatment', onClose);
  const [chosen, setChosen] = useField<readonly string[]>(form, 'chosen', noItems);
  const [place, setPlace] = useField<string>(form, 'place', wholeRug);
  const [toldBy, setToldBy] = useField<(typeof tellers)[number] | null>(form, 'toldBy', null);
  const [note, setNote] = useField(form, 'note', '');
  const agents = [
    ...new Set(remedies.filter(({ value }) => chosen.includes(value)).flatMap((one) => one.agents)),
  ];
  const places = standing.marks.flatMap((mark) =>
    stainClassOf(standing, mark) === undefined
      ? []
      : [{ value: mark.mark, words: stainWords(standing.marks, mark.mark) }],
  );
  return (
    <Sheet title="Treated by others before" isOpen onClose={onClose}>
      <ManyChoice label="What was used" columns={2} options={remedies} value={chosen} onChange={setChosen} />
      {places.length > 0 && (
        <Choice
          label="Where"
          columns={2}
          options={[{ value: wholeRug, words: 'All over the rug' }, ...places]}
          value={place}
          onChange={setPlace}
        />
      )}
      <Choice
        label="Who says so"
        columns={3}
        options={tellers.map((value) => ({ value, words: value }))}
        value={toldBy}
        onChange={setToldBy}
      />
      <PassageField label="Note" value={note} onChange={setNote} hint="when, how much, what came of it" />
      <ProblemNotice problem={problem} />
      <Button
        wide
        isDisabled={agents.length === 0 || toldBy === null || isBusy}
        onPress={() =>
          toldBy !== null &&
          act({
            ...{ type: 'OldTreatmentTold', agents, toldBy },
            ...(place === wholeRug ? {} : { mark: place }),
            ...(note.trim() === '' ? {} : { note: note.trim() }),
          })
        }
      >
        Record it
      </Button>
    </Sheet>
  );
}
