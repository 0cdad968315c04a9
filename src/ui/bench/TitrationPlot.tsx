import { scaleLinear } from 'd3-scale';
import { area, line } from 'd3-shape';
import type { TitrationPoint } from '../../core/chemistry/index.ts';
import { figure } from '../dossier/figures.ts';
import { massText } from './mixing.ts';

const width = 620;
const height = 320;
const side = { left: 54, right: 20, top: 34, bottom: 40 };

/** How the pH moves as the agent goes in: the likely curve, where it may lie, the target, and what to weigh. */
export function TitrationPlot(props: {
  readonly points: readonly TitrationPoint[];
  readonly targetPh: number;
  readonly grams: number;
  readonly interval: readonly [number, number];
  readonly agent: string;
}) {
  const { points, targetPh, grams, interval, agent } = props;
  const [least, most] = interval;
  const phs = points.map(({ pH }) => pH);
  const reach = Math.max(
    most * 1.08,
    ...points.filter(({ grams: at }) => at <= most * 1.25).map((one) => one.grams),
  );
  const x = scaleLinear()
    .domain([0, reach])
    .range([side.left, width - side.right]);
  const y = scaleLinear()
    .domain([Math.min(...phs) - 0.2, Math.max(...phs) + 0.2])
    .range([height - side.bottom, side.top]);
  const inside = points.filter(({ least: from }) => from <= reach);
  const clipped = (value: number) => x(Math.min(reach, value));
  const possible = area<TitrationPoint>()
    .y(({ pH }) => y(pH))
    .x0((one) => clipped(one.least))
    .x1((one) => clipped(one.most))([...inside]);
  const likely = line<TitrationPoint>()
    .x((one) => clipped(one.grams))
    .y(({ pH }) => y(pH))([...inside.filter((one) => one.grams <= reach)]);
  const ticks = y.ticks(4);
  return (
    <svg
      className="mixPlot"
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={`pH by the amount of ${agent}: from pH ${figure(points[0]?.pH ?? Number.NaN)} with none to pH ${figure(targetPh)} with ${massText(grams)}, somewhere between ${massText(least)} and ${massText(most)}.`}
    >
      {ticks.map((pH) => (
        <g key={pH}>
          <line x1={side.left} x2={width - side.right} y1={y(pH)} y2={y(pH)} className="mixGrid" />
          <text x={side.left - 8} y={y(pH) + 5} textAnchor="end">
            {figure(pH)}
          </text>
        </g>
      ))}
      <rect
        x={x(least)}
        width={Math.max(2, x(most) - x(least))}
        y={side.top}
        height={height - side.bottom - side.top}
        className="mixInterval"
      />
      {possible === null ? null : <path d={possible} className="mixPossible" />}
      {likely === null ? null : <path d={likely} className="mixLikely" />}
      <line x1={side.left} x2={width - side.right} y1={y(targetPh)} y2={y(targetPh)} className="mixTarget" />
      <circle cx={x(grams)} cy={y(targetPh)} r={6} className="mixPoint" />
      <text x={side.left} y={side.top - 14}>
        pH
      </text>
      <text x={width - side.right} y={y(targetPh) - 8} textAnchor="end">
        wanted: pH {figure(targetPh)}
      </text>
      <text x={side.left} y={height - 12}>
        0 g
      </text>
      <text x={x((least + most) / 2)} y={height - 12} textAnchor="middle">
        {massText(least)} to {massText(most)}
      </text>
    </svg>
  );
}
