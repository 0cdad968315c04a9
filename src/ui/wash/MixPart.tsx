import { type MixLine, type PlanStep, stepMix } from '../../core/wash/index.ts';
import { mixingPlaceOf } from '../../dossier/index.ts';
import { useShelf } from '../call/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { figure } from '../dossier/figures.ts';
import { Notice, ProblemNotice } from '../kit/index.ts';
import { amountText } from '../shelf/amountText.ts';

const waterWords = {
  absent: 'The supply water was never read: the worst is assumed.',
  old: 'The reading of the water is old: the worst is assumed.',
  'no alkalinity': 'The water’s alkalinity is not known: the worst is assumed.',
  'no hardness': 'The water’s hardness is not known: the worst is assumed.',
} as const;

/** What to measure out for a step, from this shelf with this water. */
export function MixPart({ step }: { readonly step: PlanStep }) {
  const { now } = useDossier();
  const { standing } = useShelf();
  if (standing === null || step.agents.every((agent) => agent === 'water')) return null;
  const { lines, litres, perLitre, water } = stepMix(step, mixingPlaceOf(standing, now));
  const isDosed = lines.some(({ targetPh, amount }) => targetPh !== null && amount !== null);
  return (
    <div className="amounts">
      {lines.map((line) => (
        <Line key={line.agent} line={line} bath={perLitre ? 'for each litre' : `in ${figure(litres)} L`} />
      ))}
      {isDosed && water.asks !== null && water.asks !== 'no hardness' ? (
        <Notice tone="caution" title={waterWords[water.asks]}>
          <p>Begin with the least amount and measure. Write the supplier’s figures on the page Shelf.</p>
        </Notice>
      ) : null}
      {isDosed ? (
        <p className="why">Computed by charge balance; the meter decides before the bath touches the rug.</p>
      ) : null}
    </div>
  );
}

function Line({ line, bath }: { readonly line: MixLine; readonly bath: string }) {
  const { amount, product, lot, agent, targetPh, problems } = line;
  return (
    <>
      {amount === null ? null : (
        <div className="amt">
          {amountText(amount.least, amount.unit)} – {amountText(amount.most, amount.unit)}{' '}
          <small>
            {product?.name ?? `pure ${agent}`}
            {lot === null ? '' : `, lot ${lot}`}, {bath}
            {targetPh === null
              ? ''
              : `, to pH ${figure(targetPh)} (computed ${amountText(amount.computed, amount.unit)})`}
          </small>
        </div>
      )}
      {problems.map((problem) => (
        <ProblemNotice key={problem.code} problem={problem} />
      ))}
    </>
  );
}
