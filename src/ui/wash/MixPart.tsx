import { useMemo } from 'react';
import { type BathAcid, bathAcid, type Mixed, type StepMix, stepMix } from '../../core/wash/index.ts';
import { agreedPlan, mixingPlaceOf } from '../../dossier/index.ts';
import { assumedWaterWords, bathAcidWords, mixLineWords } from '../../text/mixWords.ts';
import { useShelf } from '../call/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { Notice, ProblemNotice } from '../kit/index.ts';
import { ProductHazards } from './ProductHazards.tsx';

/** What a step or a spotter is mixed from here; null until the shelf is known. */
export function useMix(step: Mixed): StepMix | null {
  const { now } = useDossier();
  const { standing } = useShelf();
  const today = now.slice(0, 10);
  return useMemo(
    () => (standing === null ? null : stepMix(step, mixingPlaceOf(standing, today))),
    [step, standing, today],
  );
}

/** The acid that brings the water of a step's bath into its band; null where it takes none. */
export function useBathAcid(step: Mixed): BathAcid | null {
  const { standing: rug, now } = useDossier();
  const { standing: shelf } = useShelf();
  const today = now.slice(0, 10);
  return useMemo(() => {
    const bounds = agreedPlan(rug)?.bounds ?? { forbiddenAgents: [] };
    return shelf === null ? null : bathAcid(step, mixingPlaceOf(shelf, today), bounds);
  }, [step, rug, shelf, today]);
}

/** What to measure out, from this shelf with this water. */
export function MixPart({ step }: { readonly step: Mixed }) {
  const mix = useMix(step);
  const acid = useBathAcid(step);
  if (mix === null || mix.lines.length === 0) return null;
  const lines = acid === null ? mix.lines : [...mix.lines, acid.line];
  const isDosed = lines.some(({ targetPh, amount }) => targetPh !== null && amount !== null);
  const assumed = isDosed ? assumedWaterWords(mix.water) : null;
  const toBand = acid === null ? null : bathAcidWords(acid);
  return (
    <div className="amounts">
      {mix.lines.map((line) => {
        const words = mixLineWords(mix, line);
        const { product, lot, agent, problems } = line;
        // A step that states no amount of its own takes its agent from the bath that was mixed and proved.
        const isFromBath =
          words === null && problems.length === 0 && step.amounts.every((one) => one.agent !== agent);
        return (
          <div key={line.agent}>
            {words !== null && (
              <div className="amt">
                {words.amount} <small>{words.of}</small>
              </div>
            )}
            {isFromBath && (
              <p>
                <b>{product?.name ?? agent}</b>
                {lot === null ? '' : `, lot ${lot}`}: from the wash bath, no stronger
              </p>
            )}
            {problems.map((problem) => (
              <ProblemNotice key={problem.code} problem={problem} />
            ))}
          </div>
        );
      })}
      {acid !== null && toBand !== null && (
        <Notice tone="caution" title={toBand.what}>
          <p>{toBand.now}</p>
          <ProductHazards agents={[acid.line.agent]} />
          {acid.line.problems.map((problem) => (
            <ProblemNotice key={problem.code} problem={problem} />
          ))}
        </Notice>
      )}
      {assumed !== null && (
        <Notice tone="caution" title={assumed.what}>
          <p>{assumed.now}</p>
        </Notice>
      )}
      {isDosed && (
        <p className="why">Computed by charge balance; the meter decides before it touches the rug.</p>
      )}
    </div>
  );
}
