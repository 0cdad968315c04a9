import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import { figure } from '../dossier/figures.ts';
import { instantWords } from '../kit/index.ts';

export interface PlotPoint {
  readonly at: string;
  readonly value: number;
}

const width = 620;
const height = 190;
const side = { left: 12, right: 110, top: 26, bottom: 30 };

/** Readings over time against the band they must keep; what is outside is marked by shape as well. */
export function BandPlot(props: {
  readonly name: string;
  readonly unit: string;
  readonly points: readonly PlotPoint[];
  readonly band: { readonly least: number; readonly most: number };
}) {
  const { name, unit, points, band } = props;
  const last = points.at(-1);
  const values = [...points.map(({ value }) => value), band.least, band.most];
  const spread = Math.max(Math.max(...values) - Math.min(...values), 0.5);
  const y = scaleLinear()
    .domain([Math.min(...values) - spread * 0.15, Math.max(...values) + spread * 0.15])
    .range([height - side.bottom, side.top]);
  const times = points.map(({ at }) => Date.parse(at));
  const [from, until] = [Math.min(...times), Math.max(...times)];
  const x = scaleLinear()
    .domain(until > from ? [from, until] : [from - 1, from + 1])
    .range([side.left + 14, width - side.right]);
  const place = (point: PlotPoint): [number, number] => [x(Date.parse(point.at)), y(point.value)];
  const path = line<PlotPoint>(
    (point) => place(point)[0],
    (point) => place(point)[1],
  )([...points]);
  const words =
    last === undefined
      ? `${name}: no reading yet; band ${figure(band.least, 2)} to ${figure(band.most, 2)} ${unit}`
      : `${name}: ${points.length} readings, last ${figure(last.value, 2)} ${unit} at ${instantWords(last.at)}; band ${figure(band.least, 2)} to ${figure(band.most, 2)}`;
  const isOut = ({ value }: PlotPoint) => value < band.least || value > band.most;
  return (
    <svg className="plot" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={words}>
      <rect
        x={0}
        width={width}
        y={y(band.most)}
        height={Math.max(0, y(band.least) - y(band.most))}
        className="plot-band"
      />
      <line x1={0} x2={width} y1={y(band.most)} y2={y(band.most)} className="plot-edge" />
      <line x1={0} x2={width} y1={y(band.least)} y2={y(band.least)} className="plot-edge" />
      <text x={side.left} y={y(band.most) - 7}>
        {name} {figure(band.most, 2)} {unit} highest
      </text>
      <text x={side.left} y={y(band.least) + 20}>
        {figure(band.least, 2)} {unit} lowest
      </text>
      {path !== null && <path d={path} className="plot-line" />}
      {points.map((point) => {
        const [cx, cy] = place(point);
        return isOut(point) ? (
          <path key={point.at} d={`M${cx} ${cy - 9}l9 16h-18z`} className="plot-out" />
        ) : (
          <circle key={point.at} cx={cx} cy={cy} r={6} className="plot-point" />
        );
      })}
      {last !== undefined && (
        <text x={place(last)[0] + 14} y={place(last)[1] + 6} className="plot-last">
          {figure(last.value, 2)}
        </text>
      )}
    </svg>
  );
}
