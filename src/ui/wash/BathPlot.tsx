import { scaleLinear } from 'd3-scale';
import { useRef } from 'react';
import { instantWords } from '../kit/index.ts';
import type { BathPlotted, PlotReading, PlotZone } from './bathPlots.ts';
import { useWidth } from './useWidth.ts';
import { VerdictLine } from './VerdictLine.tsx';

const height = 176;
const side = { left: 62, right: 34, top: 12, bottom: 30 };

/** Readings over time before the limits they were judged by; the same facts stand in words for whoever hears them. */
export function BathPlot({ plot }: { readonly plot: BathPlotted }) {
  const { name, readings, limits } = plot;
  const last = readings.at(-1);
  if (last === undefined) return null;
  return (
    <figure className="bath-plot">
      <figcaption>
        <b>
          {name} {last.words}
        </b>{' '}
        <span className="why">{instantWords(last.at)}</span>
        <VerdictLine verdict={last.verdict} isQuiet />
      </figcaption>
      <Drawn plot={plot} />
      <p className="why">{limits}</p>
      <ul className="unseen">
        {readings.map(({ at, words, verdict }) => (
          <li key={at}>
            {name}, {instantWords(at)}: {words}, {verdict.words}
          </li>
        ))}
      </ul>
    </figure>
  );
}

function Drawn({ plot }: { readonly plot: BathPlotted }) {
  const { readings, domain, marks, ahead } = plot;
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidth(frame);
  const times = readings.map(({ at }) => Date.parse(at));
  const [from, until] = [Math.min(...times), Math.max(...times)];
  const x = scaleLinear()
    .domain(until > from ? [from, until] : [from - 1, from + 1])
    .range([side.left + 18, width - side.right - 18]);
  const y = scaleLinear()
    .domain(domain)
    .range([height - side.bottom, side.top])
    .clamp(true);
  const at = (one: PlotReading): number => x(Date.parse(one.at));
  // Each reading stands before the limits that held for it, from half way to the one before to half way to the next.
  const edges = readings.map((one, index) => {
    const [before, after] = [readings[index - 1], readings[index + 1]];
    return {
      one,
      left: before === undefined ? side.left : (at(before) + at(one)) / 2,
      right: after === undefined ? width - side.right : (at(one) + at(after)) / 2,
    };
  });
  const hour = (value: number, anchor: 'start' | 'end' | 'middle', words: string) => (
    <text x={value} y={height - 8} textAnchor={anchor}>
      {words}
    </text>
  );
  const [first, last] = [readings[0], readings.at(-1)];
  return (
    <div ref={frame}>
      <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
        {edges.map(({ one, left, right }) => (
          <Zones key={one.at} zones={one.zones} left={left} right={right} y={y} />
        ))}
        <Zones zones={ahead} left={width - side.right} right={width} y={y} />
        {marks.map(({ value, words }) => (
          <g key={words}>
            <line x1={side.left} x2={width} y1={y(value)} y2={y(value)} className="bath-line" />
            <text x={side.left - 8} y={y(value) + 5} textAnchor="end">
              {words}
            </text>
          </g>
        ))}
        <polyline
          points={readings.map((one) => `${at(one)},${y(one.value)}`).join(' ')}
          className="plot-line"
        />
        {readings.map((one) => (
          <Mark key={one.at} tone={one.verdict.tone} cx={at(one)} cy={y(one.value)} />
        ))}
        {first !== undefined && until > from && hour(at(first), 'start', instantWords(first.at))}
        {last !== undefined && hour(at(last), until > from ? 'end' : 'middle', instantWords(last.at))}
      </svg>
    </div>
  );
}

function Zones(props: {
  readonly zones: readonly PlotZone[];
  readonly left: number;
  readonly right: number;
  readonly y: (value: number) => number;
}) {
  const { zones, left, right, y } = props;
  const bottom = height - side.bottom;
  const edge = (value: number) =>
    value === Number.POSITIVE_INFINITY ? side.top : value === Number.NEGATIVE_INFINITY ? bottom : y(value);
  return zones.map(({ tone, from, until }) => (
    <rect
      key={`${tone}${from}`}
      className={`bath-zone-${tone}`}
      x={left}
      width={Math.max(0, right - left)}
      y={edge(until)}
      height={Math.max(0, edge(from) - edge(until))}
    />
  ));
}

/** Fine, to be brought back or a stop: told by shape as well as by colour. */
function Mark(props: { readonly tone: 'ok' | 'caution' | 'stop'; readonly cx: number; readonly cy: number }) {
  const { tone, cx, cy } = props;
  if (tone === 'ok') return <circle cx={cx} cy={cy} r={6} className="plot-point" />;
  const path = tone === 'stop' ? `M${cx} ${cy - 10}l10 17h-20z` : `M${cx} ${cy - 9}l9 9l-9 9l-9 -9z`;
  return <path d={path} className={tone === 'stop' ? 'plot-out' : 'bath-caution'} />;
}
