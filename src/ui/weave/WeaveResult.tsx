import type { AxisCount, WeaveAnswer, WeaveCount } from '../../core/weave/index.ts';
import { nodesWords, weaveNoteWords } from '../../text/weaveWords.ts';
import { Notice, Section } from '../kit/index.ts';

export type Axis = 'weftwise' | 'warpwise';

const figures = (value: number): string => String(Number(value.toPrecision(3)));
const between = ([low, high]: readonly [number, number]): string => `${figures(low)} to ${figures(high)}`;

export const axisNames: Readonly<Record<Axis, string>> = {
  weftwise: 'Columns, across the rug',
  warpwise: 'Rows, along the rug',
};

/** How far an axis may be relied on, in words. */
export function trustWords(
  { confidence }: AxisCount,
  state: { readonly isConfirmed: boolean; readonly isTapped: boolean; readonly isChosen: boolean },
): string {
  if (state.isConfirmed) return 'confirmed by you';
  if (state.isTapped || state.isChosen) {
    const by = state.isTapped ? 'by your taps' : 'chosen by you';
    return confidence < 0.8 ? `${by}; the picture does not bear it out` : `${by}; to be confirmed`;
  }
  return confidence < 0.8 ? 'to be confirmed' : 'automatic';
}

/** The visible repeats of both axes; no scale is needed for them. */
export function RepeatTable(props: { readonly count: WeaveCount; readonly trust: (axis: Axis) => string }) {
  return (
    <div className="scroll">
      <table>
        <thead>
          <tr>
            <th scope="col">Visible repeat</th>
            <th scope="col" className="num">
              Every
            </th>
          </tr>
        </thead>
        <tbody>
          {(['weftwise', 'warpwise'] as const).map((axis) => (
            <tr key={axis}>
              <th scope="row">
                {axisNames[axis]}
                <span className="why">{props.trust(axis)}</span>
              </th>
              <td className="num">
                <b>{figures(props.count[axis].pitchPx)} px</b>
                <span className="why">{between(props.count[axis].pitchInterval95)} px</span>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** Knots per 7 cm and per area, or why none is stated. */
export function DensitySection(props: { readonly answer: WeaveAnswer; readonly isConfirmed: boolean }) {
  const { answer, isConfirmed } = props;
  const { density, nodesPerKnot, scale } = answer;
  const isScaleExact = scale !== null && scale.interval95[0] === scale.interval95[1];
  const notes = answer.notes.filter(
    (note) => !(isConfirmed && (note === 'check-the-overlay' || note === 'other-factor-close')),
  );
  return (
    <Section title="Knots">
      {density === null ? null : (
        <>
          <p className="amt">
            {figures(density.perDm2)} <small>knots per dm²</small>
          </p>
          <p>
            {between(density.interval95)} per dm²; {figures(density.perSquareInch)} per square inch (
            {between([
              (density.interval95[0] * density.perSquareInch) / density.perDm2,
              (density.interval95[1] * density.perSquareInch) / density.perDm2,
            ])}
            ). <b>{isConfirmed ? 'Confirmed by you.' : 'Not confirmed.'}</b>
          </p>
          <ul>
            {(['weftwise', 'warpwise'] as const).map((axis) => {
              const { knotsPer7cm, interval95 } = answer[axis];
              return knotsPer7cm === null || interval95 === null ? null : (
                <li key={axis}>
                  {axis === 'weftwise' ? 'Across' : 'Along'}: {figures(knotsPer7cm)} knots in 7 cm (
                  {between(interval95)})
                </li>
              );
            })}
          </ul>
        </>
      )}
      {nodesPerKnot.value === null && nodesPerKnot.readings.length > 0 ? (
        <>
          <p>No density is stated yet. It is one of these:</p>
          <ul>
            {nodesPerKnot.readings.map((reading) => (
              <li key={reading.nodes}>
                with {reading.nodes} {reading.nodes === 1 ? 'node' : 'nodes'} to a knot:{' '}
                {figures(reading.weftwiseKnotsPer7cm)} × {figures(reading.warpwiseKnotsPer7cm)} knots in 7 cm,{' '}
                {figures(reading.perDm2)} per dm²
              </li>
            ))}
          </ul>
        </>
      ) : null}
      {density === null ? null : (
        <p className="why">
          {nodesPerKnot.value} {nodesPerKnot.value === 1 ? 'node' : 'nodes'} to a knot,{' '}
          {nodesWords[nodesPerKnot.why]}. The intervals (95 %) are of this place
          {isScaleExact ? '; the scale is taken as exact' : ' and its scale'}. One place can differ from the
          next by five per cent: count three or more.
        </p>
      )}
      {notes.length === 0 ? null : (
        <Notice tone="caution" title="To know before using it">
          {notes.map((note) => (
            <p key={note}>{weaveNoteWords[note]}</p>
          ))}
        </Notice>
      )}
    </Section>
  );
}
