import { Button, ProblemNotice } from '../../kit/index.ts';
import { useDossier } from '../dossierView.ts';
import { figure } from '../figures.ts';
import { useForm } from '../useForm.ts';

/** Baths the workshop means to mix beyond what the plan proposes; each asks for its own tests. */
export function PlannedBaths() {
  const { visit, open, ask } = useDossier();
  const { act, isBusy, problem } = useForm('planned baths');
  const baths = visit?.plannedBaths ?? [];
  if (baths.length === 0 && !open) return null;
  return (
    <>
      {baths.length === 0 ? null : <h3>Baths of your own</h3>}
      <ul className="plain-list">
        {baths.map(({ bath, purpose, agents, ph }) => (
          <li key={bath} className="with-button">
            <div>
              <b>{purpose}</b>
              <div className="why">
                {agents.join(', ')}; {ph === undefined ? 'pH not known' : `pH ${figure(ph, 2)}`}. Its tests
                stand among the dye tests.
              </div>
            </div>
            {open && (
              <Button tone="ghost" isDisabled={isBusy} onPress={() => act({ type: 'BathDropped', bath })}>
                Drop it
              </Button>
            )}
          </li>
        ))}
      </ul>
      {problem && <ProblemNotice problem={problem} />}
      {open && (
        <Button tone="ghost" onPress={() => ask({ kind: 'planned bath' })}>
          Plan a bath of your own
        </Button>
      )}
    </>
  );
}
