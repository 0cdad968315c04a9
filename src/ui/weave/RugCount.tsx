import { useState } from 'react';
import { threeFigures, toThreeFigures, totalKnots, weavingDays } from '../../core/weave/index.ts';
import { type Estimate, type KnotCount, type KnotResult, knotResult } from '../../dossier/index.ts';
import { FactList, Notice, NumberField } from '../kit/index.ts';
import './weave.css';
import { RepairKnots, type RepairPlace } from './RepairKnots.tsx';

export interface RugCountProps {
  readonly count: KnotCount;
  readonly units: 'metric' | 'customary';
  /** Measured area without fringe [m²]; null asks for it. */
  readonly areaM2: number | null;
  readonly marks: readonly RepairPlace[];
}

const range = ({ interval95 }: Estimate, each = 1): string | null =>
  interval95 === null ? null : interval95.map((bound) => threeFigures(each * bound)).join(' to ');

const axisLine = (name: string, axis: KnotResult['weftwisePerM']): string => {
  const interval = range(axis, 0.07);
  const spread = `places from ${threeFigures(0.07 * axis.least)} to ${threeFigures(0.07 * axis.most)}`;
  return `${name}: ${threeFigures(0.07 * axis.value)} in 7 cm${interval === null ? '' : `, ${interval}`}; ${spread}`;
};

/** How far a person vouches for the figures, in words. */
export function vouchedWords(count: KnotCount, { isConfirmed }: KnotResult): string {
  if (count.counted === 'by hand') return 'Counted by hand with a ruler.';
  return isConfirmed
    ? 'Confirmed by a person along both ways at every place.'
    : 'Not confirmed: a person has to look at both ways at every place.';
}

/** One result from all places: medians, spread, odd places, every notation, and what follows from it. */
export function RugCount({ count, units, areaM2, marks }: RugCountProps) {
  const result = knotResult(count);
  const areas = [
    { estimate: result.perDm2, unit: 'knots per dm²' },
    { estimate: result.perSquareInch, unit: 'knots per square inch' },
  ];
  const [first, second] = units === 'metric' ? areas : areas.toReversed();
  const few = count.places.length < 3;
  return (
    <div className="rugCount">
      {first === undefined || second === undefined ? null : (
        <>
          <p className="amt">
            {threeFigures(first.estimate.value)} <small>{first.unit}</small>
          </p>
          <p>
            {range(first.estimate) === null ? '' : `${range(first.estimate)}; `}
            {threeFigures(second.estimate.value)} {second.unit}
            {range(second.estimate) === null ? '' : ` (${range(second.estimate)})`}.{' '}
            <b>{vouchedWords(count, result)}</b>
          </p>
        </>
      )}
      <ul>
        <li>{axisLine('Across', result.weftwisePerM)}</li>
        <li>{axisLine('Along', result.warpwisePerM)}</li>
      </ul>
      <p className="why">
        Median of {count.places.length} {count.places.length === 1 ? 'place' : 'places'},{' '}
        {count.nodesPerKnot === 1 ? 'one node' : 'two nodes'} to a knot
        {few ? '' : '. Intervals hold 19 times of 20, for the whole rug'}.
      </p>
      {few ? (
        <Notice tone="caution" title="Fewer than three places are no measure of the whole rug.">
          <p>Count at both sides and in the middle; five places are good.</p>
        </Notice>
      ) : null}
      {count.counted === 'photographed' && !result.isScaleSure ? (
        <Notice tone="caution" title="The scale does not come from a measured card at every place.">
          <p>Nothing here is surer than ±1 %, with a card nobody measured ±3 %.</p>
        </Notice>
      ) : null}
      {result.odd.length === 0 ? null : (
        <Notice tone="caution" title="Look again at what differs.">
          {result.odd.map(({ place, axis, ratio, kind }) => (
            <p key={`${place} ${axis}`}>
              {result.places[place]?.place}, {axis === 'weftwise' ? 'across' : 'along'}: {threeFigures(ratio)}{' '}
              times the median
              {kind === 'factor' ? ', a whole factor: most likely counted wrongly' : ''}.
            </p>
          ))}
        </Notice>
      )}
      <details>
        <summary>In other notations</summary>
        <FactList
          rows={result.written.map(({ name, text, assumesSquare }) => ({
            name,
            value: toThreeFigures(text),
            ...(assumesSquare ? { why: 'taken as square' } : {}),
          }))}
        />
      </details>
      <details>
        <summary>The whole rug, and weaving time</summary>
        <WholeRug result={result} areaM2={areaM2} />
      </details>
      <details>
        <summary>Knots for a repair</summary>
        <RepairKnots density={result.density} places={marks} />
      </details>
    </div>
  );
}

function WholeRug(props: { readonly result: KnotResult; readonly areaM2: number | null }) {
  const [typed, setTyped] = useState<number | null>(null);
  const areaM2 = props.areaM2 ?? typed;
  const knots =
    areaM2 === null ? null : totalKnots([{ areaM2, density: props.result.density, juftiShare: 0 }]);
  const days = knots === null ? null : weavingDays(knots);
  return (
    <>
      {props.areaM2 === null ? (
        <NumberField
          label="Area of the rug, without fringe"
          unit="m²"
          least={0.01}
          most={500}
          value={typed}
          onChange={setTyped}
        />
      ) : null}
      {knots === null || days === null ? null : (
        <p role="status">
          About <b>{threeFigures(knots)} knots</b>: {threeFigures(days.least)} to {threeFigures(days.most)}{' '}
          days of one weaver, {threeFigures(days.usual)} at the usual rate.
        </p>
      )}
      <p className="why">
        Trade statements of 3000 to 10 000 knots a day, 6000 usual, no published source. Knots over four warps
        would halve the count where they occur.
      </p>
    </>
  );
}
