import type { Axis, AxisValue, Loosening, WashPlan } from '../../../core/wash/index.ts';
import { axisNames, valueWords } from '../limitWords.ts';

const changeWords = ({ axis, from, to }: { axis: Axis | 'steps'; from: AxisValue; to: AxisValue }): string =>
  axis === 'steps'
    ? 'fewer steps'
    : `${axisNames[axis].toLowerCase()} ${valueWords(axis, to)} instead of ${valueWords(axis, from)}`;

const shownFirst = 4;

function One({ loosening }: { readonly loosening: Loosening }) {
  const { find, assumed, favourable, allows } = loosening;
  return (
    <li>
      <b>{find}</b>
      <div className="why">
        now taken as {assumed}; if {favourable}: {allows.map(changeWords).join('; ')}
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
