import { stagesOf } from '../../../dossier/stage.ts';
import { Band, Tag } from '../../kit/index.ts';
import { useDossier } from '../dossierView.ts';

const ordinals = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth'];

/** Number for life, tag of this visit, title, and how far the visit has come. */
export function Head() {
  const { standing, visit } = useDossier();
  const { opened, visits } = standing;
  const which = ordinals[visits.length - 1] ?? `${visits.length}th`;
  return (
    <header className="dossier-head">
      <div>
        <div className="stepno">
          Dossier {String(opened?.number ?? 0).padStart(4, '0')}
          {visit !== null && (
            <>
              {' · '}
              <Tag tag={visit.received.tag} />
              {' · '}
              {which} visit, for {visit.received.scope.join(', ')}
            </>
          )}
        </div>
        <h1>{opened?.title ?? 'Dossier'}</h1>
      </div>
      <Band stages={stagesOf(standing)} />
    </header>
  );
}
