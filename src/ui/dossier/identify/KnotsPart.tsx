import { Button, FactList, When } from '../../kit/index.ts';
import { useDossier } from '../dossierView.ts';
import { counted, figure } from '../figures.ts';
import { Part } from '../Part.tsx';
import { knotSummary } from './knotSummary.ts';

/** A count by hand carries three figures at most. */
const threeFigures = (text: string): string =>
  text.replace(/\d+(\.\d+)?/g, (number) => String(Number(Number(number).toPrecision(3))));

/** Knots counted by hand: the median, how far the places differ, and every notation of the trade. */
export function KnotsPart() {
  const { standing, open, nameOf, ask } = useDossier();
  const latest = standing.knots.at(-1);
  const summary = latest === undefined ? null : knotSummary(latest);
  const per7cm = (perM: number) => figure(perM * 0.07);
  return (
    <Part title="Knots" id="knots">
      {latest === undefined || summary === null ? (
        <p className="why">
          Not counted. Count at five places at least: a hand-woven rug is not the same everywhere.
        </p>
      ) : (
        <>
          <p>
            <b>
              {per7cm(summary.density.weftwisePerM)} × {per7cm(summary.density.warpwisePerM)} per 7 cm
            </b>{' '}
            (across × along), median of {counted(latest.places.length, 'place')}
          </p>
          <p className="why">
            across {per7cm(summary.weftwise.least)} to {per7cm(summary.weftwise.most)}, along{' '}
            {per7cm(summary.warpwise.least)} to {per7cm(summary.warpwise.most)} per 7 cm ·{' '}
            {latest.nodesPerKnot === 2 ? 'two nodes' : 'one node'} per knot · counted by hand by{' '}
            {nameOf(latest.by)} <When at={latest.when} />
          </p>
          {latest.places.length < 3 && (
            <p className="open-fact">Fewer than three places: no measure of the whole rug yet.</p>
          )}
          <details>
            <summary>In other notations</summary>
            <FactList
              rows={summary.written.map(({ name, text, assumesSquare }) => ({
                name,
                value: threeFigures(text),
                ...(assumesSquare ? { why: 'taken as square' } : {}),
              }))}
            />
          </details>
        </>
      )}
      {open && (
        <Button tone="ghost" wide onPress={() => ask({ kind: 'knots' })}>
          Count knots by hand
        </Button>
      )}
    </Part>
  );
}
