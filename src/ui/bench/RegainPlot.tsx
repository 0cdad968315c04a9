import { scaleLinear } from 'd3-scale';
import { area, line } from 'd3-shape';
import type { Estimate } from '../../core/air/index.ts';
import type { RegainBand } from '../../core/drying/index.ts';
import { wetClockHours } from '../../core/mould/index.ts';
import { figure } from '../dossier/figures.ts';

const width = 620;
const height = 300;
const side = { left: 14, right: 20, top: 28, bottom: 34 };

const percent = (ratio: number) => `${figure(ratio * 100, 0)} %`;

/** Water in a rug over the hours to come: the likely course, its 80 and 95 % bands, the target, and the wet clock. */
export function RegainPlot(props: {
  readonly bands: readonly RegainBand[];
  readonly target: number;
  readonly words: string;
  /** Water as weighed, with what the dry mass leaves open. */
  readonly weighed?: readonly { readonly hour: number; readonly water: Estimate }[];
  /** The present hour, where the course began before it. */
  readonly nowHour?: number;
}) {
  const { bands, target, words, weighed = [], nowHour } = props;
  const end = bands.at(-1)?.hour ?? 0;
  const begin = Math.min(0, bands[0]?.hour ?? 0);
  const most = Math.max(
    target * 1.5,
    ...bands.map(({ interval95 }) => interval95[1]),
    ...weighed.map(({ water }) => water.most),
  );
  const x = scaleLinear()
    .domain([begin, end])
    .range([side.left, width - side.right]);
  const y = scaleLinear()
    .domain([0, most])
    .range([height - side.bottom, side.top]);
  const band = (of: 'interval80' | 'interval95') =>
    area<RegainBand>()
      .x(({ hour }) => x(hour))
      .y0((one) => y(one[of][0]))
      .y1((one) => y(one[of][1]))([...bands]) ?? '';
  const median = line<RegainBand>()
    .x(({ hour }) => x(hour))
    .y((one) => y(one.median))([...bands]);
  const clock = [wetClockHours.amberHours, wetClockHours.redHours].filter((hour) => hour < end);
  return (
    <svg className="dryPlot" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={words}>
      <rect
        x={side.left}
        width={x(end) - side.left}
        y={y(target)}
        height={y(0) - y(target)}
        className="dryTarget"
      />
      <path d={band('interval95')} className="dryPossible" />
      <path d={band('interval80')} className="dryLikely" />
      {median === null ? null : <path d={median} className="dryMedian" />}
      {weighed.map(({ hour, water }) => (
        <g key={hour}>
          <line x1={x(hour)} x2={x(hour)} y1={y(water.least)} y2={y(water.most)} className="dryRange" />
          <circle cx={x(hour)} cy={y(water.likely)} r={5} className="dryPoint" />
        </g>
      ))}
      {nowHour === undefined ? null : (
        <line x1={x(nowHour)} x2={x(nowHour)} y1={side.top} y2={height - side.bottom} className="dryNow" />
      )}
      {clock.map((hour) => (
        <g key={hour}>
          <line
            x1={x(hour)}
            x2={x(hour)}
            y1={side.top}
            y2={height - side.bottom}
            className={hour === wetClockHours.redHours ? 'dryRed' : 'dryAmber'}
          />
          <text x={x(hour) + 6} y={side.top - 8}>
            {hour === wetClockHours.redHours ? '▲' : '◆'} {hour} h
          </text>
        </g>
      ))}
      <text x={side.left} y={side.top - 8}>
        {percent(most)} water
      </text>
      <text x={side.left} y={height - 8}>
        0 h
      </text>
      <text x={x(end)} y={height - 8} textAnchor="end">
        {figure(end, 0)} h
      </text>
      <text x={x(end) - 4} y={y(target) - 6} textAnchor="end">
        dry at {percent(target)}
      </text>
    </svg>
  );
}
