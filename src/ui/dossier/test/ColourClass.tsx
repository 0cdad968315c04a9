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

/** The class a colour comes to, and the reading that decides it. */
export function ColourClass({ colour }: { readonly colour: string }) {
  const { plan } = useDossier();
  const verdict = plan.ok ? plan.value.dyes.find((one) => one.colour === colour) : undefined;
  if (verdict === undefined) return null;
  const { standing, traits, binding } = verdict;
  return (
    <p className="colour-class">
      <span aria-hidden="true">{signs[standing]} </span>
      <b>{standing}</b>
      {traits.length > 0 && `, ${traits.join(', ')}`}
      <span className="why">
        {effects[standing]}
        {binding === undefined
          ? ' · nothing graded yet'
          : ` · decided by ${binding.liquid}, ${binding.side}: grade ${binding.grade}`}
      </span>
    </p>
  );
}
