import { Link } from 'wouter';
import { airEveryHours, type RoomScenario } from '../../dossier/index.ts';
import { factorWords, makeRunsWords, makeWords, teachesWords } from '../../text/learntWords.ts';
import { FactList, instantWords, Section } from '../kit/index.ts';
import { useRoomView } from './roomView.ts';

/** What past rugs taught of this room and of their makes, and which of them fits none of the others. */
export function LearntPart({ learning }: { readonly learning: RoomScenario['learning'] }) {
  const { standing } = useRoomView();
  const { g, constructions } = learning;
  const makes = Object.entries(constructions);
  const alone = new Set(
    [g, ...makes.flatMap(([, { resistance, criticalRegain }]) => [resistance, criticalRegain])].flatMap(
      ({ standAlone }) => standAlone,
    ),
  );
  return (
    <Section title="What past rugs taught">
      <p>{factorWords(learning)}</p>
      <p className="why">{teachesWords(airEveryHours)}</p>
      <FactList rows={makes.map(([name, of]) => ({ name, value: makeWords(of), why: makeRunsWords(of) }))} />
      {standing.past.length === 0 ? null : (
        <details>
          <summary>Past rugs that taught of the room or their make: {standing.past.length}</summary>
          <ul className="plain-list roomAlarms">
            {standing.past.toReversed().map((run) => (
              <li key={run.entry} className="later">
                <Link href={`/rugs/${run.rug}?at=dry`} className="clockName">
                  {run.construction ?? 'make unknown'}, accepted as dry {instantWords(run.when)}
                </Link>
                <p className="why">
                  {run.g === null
                    ? 'says nothing of the room as it is now'
                    : `dried ${run.g.likely.toFixed(2)} times as fast as reckoned`}
                  , from {run.readings} readings
                  {alone.has(run.rug)
                    ? '. ▲ It fits none of the others and hardly counts: look at its readings'
                    : ''}
                </p>
              </li>
            ))}
          </ul>
        </details>
      )}
    </Section>
  );
}
