import { Link } from 'wouter';
import { isWet, shelfGaps } from '../../../dossier/index.ts';
import { shelfGapWords } from '../../../text/shelfGapWords.ts';
import { useShelf } from '../../call/index.ts';
import { Notice } from '../../kit/index.ts';
import { useDossier } from '../dossierView.ts';

/** What the plan on record lacks on the shelf, for which step, and what to do. */
export function ShelfGaps() {
  const { standing, visit, now } = useDossier();
  const { standing: shelf } = useShelf();
  const gaps = shelf === null ? [] : shelfGaps(standing, shelf, now);
  if (visit === null || gaps.length === 0) return null;
  return (
    <div id="shelf-gaps" className="shelf-gaps" tabIndex={-1}>
      {gaps.map((gap) => {
        const { title, happened, now: todo } = shelfGapWords(gap, isWet(visit));
        return (
          <Notice key={`${gap.step}/${gap.agent}`} tone="stop" title={title}>
            <p>{happened}</p>
            <ul className="plain-list">
              {todo.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          </Notice>
        );
      })}
      <Link className="btn ghost wide" href="/shelf">
        Open the shelf
      </Link>
    </div>
  );
}
