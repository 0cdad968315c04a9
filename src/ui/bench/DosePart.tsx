import {
  bathPh,
  dose,
  gasWarnings,
  phRange,
  solutionOf,
  titration,
  usualDoseUncertainty,
} from '../../core/chemistry/index.ts';
import { Notice, ProblemNotice } from '../kit/index.ts';
import { bareBath, type Mixing, massText, uncertaintyOf, unknownWater } from './mixing.ts';
import { TitrationPlot } from './TitrationPlot.tsx';

/** The dose of an agent that brings a bath to a pH, with the range it may truly need and the curve it lies on. */
export function DosePart({ mixing }: { readonly mixing: Mixing }) {
  const { agent, targetPh, alkalinity } = mixing;
  const bare = bareBath(mixing);
  if (bare === null || targetPh === null) {
    return (
      <Notice tone="plain" title="Not enough is known yet.">
        <p>Give the water, its temperature and the pH wanted.</p>
      </Notice>
    );
  }
  const uncertainty = uncertaintyOf(mixing);
  const dosed = dose(bare, agent, targetPh, uncertainty);
  if (!dosed.ok) return <ProblemNotice problem={dosed.problem} />;
  const { grams, interval } = dosed.value;
  const bath = { ...bare, add: [{ agent, grams }] };
  const solution = solutionOf(bath);
  const found = solution.ok ? bathPh(solution.value) : solution;
  const warnings = found.ok && solution.ok ? gasWarnings(found.value, solution.value.acidsMolPerL) : [];
  const range = phRange(bath, uncertainty, alkalinity === null ? unknownWater.alkalinity : null);
  const curve = titration(bare, agent, targetPh, uncertainty);
  return (
    <>
      <p className="amt">
        {massText(grams)} <small>{agent}</small>
      </p>
      <p>
        {massText(interval[0])} to {massText(interval[1])}, with the agent’s strength ±
        {usualDoseUncertainty.strength * 100} % and the water{' '}
        {alkalinity === null ? 'anything' : `±${usualDoseUncertainty.alkalinity * 100} %`} (workshop setting).
      </p>
      {alkalinity === null ? (
        <Notice tone="caution" title="The water’s alkalinity is not known.">
          <p>
            Anything from {unknownWater.alkalinity.least} to {unknownWater.alkalinity.most} mg/L is assumed.
            It stands on the water supplier’s sheet and narrows the range; what the rug holds and what may go
            down the drain wait for it.
          </p>
        </Notice>
      ) : null}
      {curve.ok ? (
        <TitrationPlot points={curve.value} targetPh={targetPh} {...{ grams, interval, agent }} />
      ) : null}
      <p className="why">
        {range.ok
          ? `So dosed, the bath stands between pH ${range.value.least.toFixed(1)} and ${range.value.most.toFixed(1)}. `
          : ''}
        Computed by charge balance; the water is taken as bicarbonate that loses no carbon dioxide. Start at
        the lower end, stir, and measure the pH before use.
      </p>
      {warnings.map(({ gas, level }) => (
        <Notice
          key={gas}
          tone="stop"
          title={level === 'blocked' ? `Gives off ${gas}.` : `${gas}: ventilate.`}
        >
          <p>Never mix this; at no strength.</p>
        </Notice>
      ))}
    </>
  );
}
