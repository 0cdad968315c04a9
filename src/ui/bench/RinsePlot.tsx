import { scaleLinear, scaleLog } from 'd3-scale';
import { curveStepAfter, line } from 'd3-shape';
import { type RinsePoint, type RinseWay, rinseCourse } from '../../core/chemistry/index.ts';
import { figure } from '../dossier/figures.ts';

const width = 620;
const height = 320;
const side = { left: 66, right: 16, top: 34, bottom: 40 };
/** Shares of the bath that carry a line. */
const marks = [1, 0.1, 0.01, 0.001];

export const rinseClass: Readonly<Record<RinseWay['way'], string>> = {
  'fill and drain': 'rinseA',
  'fill, drain and extract': 'rinseB',
  flow: 'rinseC',
  'extract, then flow': 'rinseD',
};

/** What is left of the bath in the rug by the water used, for each way of rinsing. */
export function RinsePlot(props: {
  readonly ways: readonly RinseWay[];
  readonly end: number;
  /** Water of a way as it is read, from litres for a kilogram of rug. */
  readonly shown: (litresPerKg: number) => number;
  readonly unit: string;
}) {
  const { ways, end, shown, unit } = props;
  const most = Math.max(...ways.map(({ litresPerKg }) => litresPerKg));
  const least = Math.min(end / 3, ...ways.map(({ left }) => left));
  const x = scaleLinear()
    .domain([0, shown(most)])
    .range([side.left, width - side.right]);
  const y = scaleLog()
    .domain([least, 1])
    .range([height - side.bottom, side.top]);
  const path = (way: RinseWay) => {
    const drawn = line<RinsePoint>()
      .x(({ litresPerKg }) => x(shown(litresPerKg)))
      .y(({ left }) => y(left));
    if (way.fills !== null) drawn.curve(curveStepAfter);
    return drawn([...rinseCourse(way)]) ?? '';
  };
  const told = ways.map(({ way, litresPerKg }) => `${way}: ${figure(shown(litresPerKg), 0)} ${unit}`);
  return (
    <svg
      className="mixPlot"
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={`Share of the bath left in the rug by the water used. Down to ${figure(end * 100, 2)} %: ${told.join('; ')}.`}
    >
      {marks
        .filter((share) => share >= least)
        .map((share) => (
          <g key={share}>
            <line x1={side.left} x2={width - side.right} y1={y(share)} y2={y(share)} className="mixGrid" />
            <text x={side.left - 8} y={y(share) + 5} textAnchor="end">
              {figure(share * 100, 1)} %
            </text>
          </g>
        ))}
      <rect
        x={side.left}
        width={width - side.right - side.left}
        y={y(end)}
        height={height - side.bottom - y(end)}
        className="mixInterval"
      />
      {ways.map((way) => (
        <g key={way.way}>
          <path d={path(way)} className={`rinseLine ${rinseClass[way.way]}`} />
          <circle
            cx={x(shown(way.litresPerKg))}
            cy={y(way.left)}
            r={6}
            className={`rinseEnd ${rinseClass[way.way]}`}
          />
        </g>
      ))}
      <text x={side.left} y={side.top - 14}>
        left of the bath
      </text>
      <text x={side.left + 6} y={y(end) + 20}>
        rinsed: {figure(end * 100, 2)} %
      </text>
      <text x={side.left} y={height - 12}>
        0 {unit}
      </text>
      <text x={width - side.right} y={height - 12} textAnchor="end">
        {figure(shown(most), 0)} {unit}
      </text>
    </svg>
  );
}
