import type { Loosening, WashPlan } from '../../../core/wash/index.ts';
import { allTogether, axisNames, looserWords } from '../limitWords.ts';

const gains = ({ allows }: Loosening): string =>
  allows
    .map(({ axis, from, to }) => {
      if (axis === 'steps') return 'fewer steps';
      const words = looserWords(axis, from, to);
      return words === '' ? '' : `${axisNames[axis].toLowerCase()} ${words}`;
    })
    .filter((words) => words !== '')
    .join('; ');

const shownFirst = 4;

function One({ loosening }: { readonly loosening: Loosening }) {
  const { find, fact, assumed, favourable } = loosening;
  return (
    <li>
      <b>{fact === allTogether ? 'Everything above, at its best' : find}</b>
      <div className="why">
        now taken as {assumed}; if {favourable}: {gains(loosening)}
      </div>
    </li>
  );
}

/** What to find out, and what the plan would then allow: worked out by planning again with the fact favourable. */
export function LoosenList({ plan }: { readonly plan: WashPlan }) {
  if (plan.loosens.length === 0) return null;
  const first = plan.loosens.slice(0, shownFirst);
  const rest = plan.loosens.slice(shownFirst);
  return (
    <>
      <h3>What would loosen this</h3>
      <ul className="plain-list">
        {first.map((loosening) => (
          <One key={`${loosening.fact}${loosening.find}`} loosening={loosening} />
        ))}
      </ul>
      {rest.length > 0 && (
        <details>
          <summary>{rest.length} more</summary>
          <ul className="plain-list">
            {rest.map((loosening) => (
              <One key={`${loosening.fact}${loosening.find}`} loosening={loosening} />
            ))}
          </ul>
        </details>
      )}
    </>
  );
}
