import { useMemo } from 'react';
import { type Mixed, type StepMix, stepMix } from '../../core/wash/index.ts';
import { mixingPlaceOf } from '../../dossier/index.ts';
import { assumedWaterWords, mixLineWords } from '../../text/mixWords.ts';
import { useShelf } from '../call/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { Notice, ProblemNotice } from '../kit/index.ts';

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

/** What to measure out, from this shelf with this water. */
export function MixPart({ step }: { readonly step: Mixed }) {
  const mix = useMix(step);
  if (mix === null || mix.lines.length === 0) return null;
  const isDosed = mix.lines.some(({ targetPh, amount }) => targetPh !== null && amount !== null);
  const assumed = isDosed ? assumedWaterWords(mix.water) : null;
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
