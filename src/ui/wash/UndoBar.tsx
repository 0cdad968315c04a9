import { type RugFactType, withdrawnIds } from '../../dossier/index.ts';
import { serverNow, useMe } from '../call/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { stainWords } from '../dossier/figures.ts';
import { entryWords } from '../dossier/story/entryWords.ts';
import { useForm } from '../dossier/useForm.ts';
import { Button, ProblemNotice, useNow } from '../kit/index.ts';

const undoMs = 60_000;

/** What a knuckle records by mistake on the wash floor. */
const undoable: readonly RugFactType[] = [
  'StepStarted',
  'StepDone',
  'HandLent',
  'BathMeasured',
  'RinseMeasured',
  'LengthChecked',
  'SpotTreated',
  'SpotAired',
  'OldTreatmentTold',
  'ResidueAnswered',
  'StainAnswered',
  'FlowBegun',
  'FlowLogged',
  'StopCalled',
  'StopCleared',
];

/** For a minute what was just recorded can be taken back; the withdrawal stands in the history. */
export function UndoBar() {
  const { entries, standing, colourName } = useDossier();
  const me = useMe();
  useNow();
  const { act, isBusy, problem } = useForm('undo');
  const withdrawn = withdrawnIds(entries);
  const last = entries.findLast(({ by }) => by === me?.person);
  if (
    last === undefined ||
    withdrawn.has(last.id) ||
    !undoable.includes(last.fact.type) ||
    serverNow() - Date.parse(last.at) > undoMs
  )
    return null;
  // A stop goes together with the reading that raised it.
  const raisedBy = last.fact.type === 'StopCalled' ? last.fact.raisedBy : undefined;
  const source = entries.find(({ id }) => id === raisedBy) ?? last;
  const stops = entries.filter(
    ({ fact, id }) => fact.type === 'StopCalled' && fact.raisedBy === source.id && !withdrawn.has(id),
  );
  const { did } = entryWords(source.fact, {
    colour: colourName,
    step: (step) => step.replace(/^\d+-/, '').replaceAll('-', ' '),
    mark: (mark) => stainWords(standing.marks, mark),
  });
  const undo = () =>
    act(
      ...[...new Set([source, ...stops])].map(({ id }) => ({
        type: 'EntryWithdrawn' as const,
        entry: id,
        reason: 'Undone within a minute.',
      })),
    );
  return (
    <div className="undo-bar" role="status">
      <span>You {did}.</span>
      <Button tone="ghost" isDisabled={isBusy} onPress={undo}>
        Undo
      </Button>
      <ProblemNotice problem={problem} />
    </div>
  );
}
