import type { DyeStanding } from '../../../core/wash/index.ts';
import { useDossier } from '../dossierView.ts';

const signs: { readonly [S in DyeStanding]: string } = {
  stable: '●',
  watch: '◐',
  controlled: '◆',
  'do not immerse': '✕',
  unknown: '▲',
};

const effects: { readonly [S in DyeStanding]: string } = {
  stable: 'no extra limit',
  watch: 'cool, slightly acid, briefly wet',
  controlled: 'acid pre-treatment, test again, no soak, two people',
  'do not immerse': 'low moisture at most',
  unknown: 'no wet step until tested',
};

/** The class each colour comes to, and the reading that decides it. */
export function VerdictList() {
  const { plan } = useDossier();
  if (!plan.ok) return null;
  return (
    <div className="verdicts">
      <h3>What the tests say</h3>
      <ul className="plain-list">
        {plan.value.dyes.map((verdict) => (
          <li key={verdict.colour}>
            <span aria-hidden="true">{signs[verdict.standing]} </span>
            <b>{verdict.name}</b>: {verdict.standing}
            {verdict.traits.length > 0 && `, ${verdict.traits.join(', ')}`}
            <div className="why">
              {effects[verdict.standing]}
              {verdict.binding === undefined
                ? ' · nothing graded yet'
                : ` · decided by ${verdict.binding.liquid}, ${verdict.binding.side}: grade ${verdict.binding.grade}`}
            </div>
          </li>
        ))}
      </ul>
    </div>
  );
}
