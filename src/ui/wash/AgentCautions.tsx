import { kindOf, type PlanStep, type Rulebook, wasteWaterWords } from '../../core/wash/index.ts';
import { rulebookOf } from '../../dossier/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { ProductHazards } from './ProductHazards.tsx';

/** What must never come near the agents of a step, and why. */
const neverWith = (agents: readonly string[], { mixtures }: Rulebook): readonly string[] => {
  const holds = (side: readonly string[]) => agents.some((agent) => side.includes(agent));
  const lines = mixtures.flatMap(({ a, b, hazard }) => {
    if (a.length === 0 || b.length === 0) return [];
    if (holds(a)) return [`Never with ${b.join(', ')}: ${hazard}.`];
    return holds(b) ? [`Never with ${a.join(', ')}: ${hazard}.`] : [];
  });
  return [...new Set(lines)];
};

/** Cautions where an agent is handled: what to wear, air, eyes, what never to mix, where the water goes. */
export function AgentCautions({ step }: { readonly step: PlanStep }) {
  const { settings } = useDossier();
  const agents = step.agents.filter((agent) => agent !== 'water');
  if (agents.length === 0 && step.protection.length === 0) return null;
  return (
    <div className="note caution cautions">
      {step.protection.length > 0 && (
        <p>
          <b>
            <span aria-hidden="true">◆ </span>Wear {step.protection.join(', ')}.
          </b>
        </p>
      )}
      {agents.length > 0 && (
        <>
          <p>
            Air the room. Eyewash within reach. Read the safety data sheet of {agents.join(' and ')}
            {agents.some((agent) => kindOf(agent) !== 'solvent')
              ? '; add it to the water, never the water to it'
              : '; no flame or spark, no heat until no smell is left'}
            .
          </p>
          <ProductHazards agents={agents} />
          {neverWith(agents, rulebookOf(settings)).map((line) => (
            <p key={line}>
              <b>{line}</b>
            </p>
          ))}
          <p>{wasteWaterWords(rulebookOf(settings))}</p>
        </>
      )}
    </div>
  );
}
