import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import type { Estimate } from '../../core/air/index.ts';
import { moistureRatio, ovenDryMassOf, waterAtRest } from '../../dossier/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { percentWords } from '../dossier/figures.ts';
import { Part } from '../dossier/Part.tsx';

interface Point {
  readonly at: string;
  readonly water: Estimate;
}

const width = 620;
const height = 230;
const side = { left: 14, right: 130, top: 24, bottom: 34 };

/** Water in the rug against the rest it dries to; each weighing with its range. Nothing is drawn ahead. */
export function MassPlot() {
  const { standing, visit } = useDossier();
  if (visit === null) return null;
  const ovenDry = ovenDryMassOf(standing, visit);
  if (ovenDry === null) return null;
  const points: readonly Point[] = visit.readings
    .flatMap(({ massKg, when }) =>
      massKg === undefined ? [] : [{ at: when, water: moistureRatio(massKg, ovenDry) }],
    )
    .sort((a, b) => (a.at < b.at ? -1 : 1));
  if (points.length === 0) return null;
  const rest = waterAtRest(standing);
  const times = points.map(({ at }) => Date.parse(at));
  const [from, until] = [Math.min(...times), Math.max(...times)];
  const x = scaleLinear()
    .domain(until > from ? [from, until] : [from - 1, from + 1])
    .range([side.left + 12, width - side.right]);
  const y = scaleLinear()
    .domain([0, Math.max(rest * 1.6, ...points.map(({ water }) => water.most))])
    .range([height - side.bottom, side.top]);
  const path = line<Point>(
    ({ at }) => x(Date.parse(at)),
    ({ water }) => y(water.likely),
  )([...points]);
  const last = points.at(-1);
  return (
    <Part id="water" title="Water in it">
      <svg
        className="plot"
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={`${points.length} weighings; last ${last === undefined ? '' : percentWords(last.water.likely)} of dry mass; it rests at ${percentWords(rest)} at 65 % RH`}
      >
        <rect x={0} width={width} y={y(rest)} height={y(0) - y(rest)} className="plot-band" />
        <line x1={0} x2={width} y1={y(rest)} y2={y(rest)} className="plot-edge" />
        <text x={side.left} y={height - 6}>
          {percentWords(rest)}: the fibre’s rest at 65 % RH
        </text>
        {points.map(({ at, water }) => (
          <line
            key={at}
            x1={x(Date.parse(at))}
            x2={x(Date.parse(at))}
            y1={y(Math.max(0, water.least))}
            y2={y(water.most)}
            className="plot-range"
          />
        ))}
        {path !== null && <path d={path} className="plot-line" />}
        {points.map(({ at, water }) => (
          <circle key={at} cx={x(Date.parse(at))} cy={y(water.likely)} r={6} className="plot-point" />
        ))}
        {last !== undefined && (
          <text x={x(Date.parse(last.at)) + 14} y={y(last.water.likely) + 6} className="plot-last">
            {percentWords(last.water.likely)}
          </text>
        )}
      </svg>
      <p className="why">
        Share of oven-dry mass, X = m/m₀ − 1; the bar at each weighing is its uncertainty.
      </p>
    </Part>
  );
}
