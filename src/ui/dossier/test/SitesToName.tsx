import { sitesProposed } from '../../../dossier/index.ts';
import { Button } from '../../kit/index.ts';
import { useDossier } from '../dossierView.ts';

/** Parts that are dyed by themselves and have no row yet: fringe, selvedge, and what the marks show. */
export function SitesToName() {
  const { standing, open, ask } = useDossier();
  const proposed = sitesProposed(standing);
  if (proposed.length === 0 || !open) return null;
  return (
    <div className="blot-row">
      <h3>Not among the rows yet</h3>
      <p className="why">Where the rug has it, name it: it is tested on its own.</p>
      <ul className="plain-list">
        {proposed.map(({ kind, because }) => (
          <li key={kind} className="with-button">
            <div>
              <b>{kind}</b>
              <div className="why">{because}</div>
            </div>
            <Button
              tone="ghost"
              label={`Name it: ${kind}`}
              onPress={() => ask({ kind: 'colour', colour: null, on: kind })}
            >
              Name it
            </Button>
          </li>
        ))}
      </ul>
    </div>
  );
}
