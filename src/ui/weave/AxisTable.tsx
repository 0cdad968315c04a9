import { threeFigures, type WeaveCount } from '../../core/weave/index.ts';
import type { AxisSeen } from '../../dossier/index.ts';
import type { Axis } from './placeCount.ts';
import { axes } from './placeCount.ts';

export const axisNames: Readonly<Record<Axis, string>> = {
  weftwise: 'Columns, across the rug',
  warpwise: 'Rows, along the rug',
};

/** How far an axis may be relied on, in words. */
function trustWords({ basis, confidence = 0 }: AxisSeen): string {
  switch (basis) {
    case 'confirmed':
      return 'confirmed by you';
    case 'by hand':
      return 'counted by you';
    case 'tapped':
      return confidence < 0.8
        ? 'by your taps; the picture does not bear it out'
        : 'by your taps; to be confirmed';
    case 'automatic':
      return confidence < 0.8 ? 'to be confirmed' : 'automatic';
  }
}

const between = (least: number, most: number): string => `${threeFigures(least)} to ${threeFigures(most)}`;

/** Both axes: knots in 7 cm where scale and nodes are known, else what repeats and how often. */
export function AxisTable(props: {
  readonly count: WeaveCount | null;
  readonly found: Readonly<Record<Axis, AxisSeen | null>>;
  readonly nodes: 1 | 2 | null;
}) {
  const { count, found, nodes } = props;
  return (
    <div className="scroll">
      <table>
        <thead>
          <tr>
            <th scope="col">Way</th>
            <th scope="col" className="num">
              In 7 cm
            </th>
            <th scope="col" className="num">
              Repeats every
            </th>
          </tr>
        </thead>
        <tbody>
          {axes.map((axis) => {
            const seen = found[axis];
            const each = axis === 'weftwise' ? nodes : 1;
            const by = 1 / (each ?? 1);
            return (
              <tr key={axis}>
                <th scope="row">
                  {axisNames[axis]}
                  <span className="why">
                    {seen !== null
                      ? trustWords(seen)
                      : count === null
                        ? 'not counted yet'
                        : 'no length yet: see Scale'}
                  </span>
                </th>
                <td className="num">
                  {seen === null ? (
                    '–'
                  ) : (
                    <>
                      <b>
                        {threeFigures(seen.count * by)} {each === null ? 'nodes' : 'knots'}
                      </b>
                      <span className="why">
                        {between(seen.interval95.least * by, seen.interval95.most * by)}
                      </span>
                    </>
                  )}
                </td>
                <td className="num">
                  {count === null || seen?.basis === 'by hand'
                    ? '–'
                    : `${threeFigures(count[axis].pitchPx)} px`}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
