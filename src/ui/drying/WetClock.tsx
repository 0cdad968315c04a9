import { scaleLinear } from 'd3-scale';
import { wetClockHours } from '../../dossier/index.ts';
import { figure } from '../dossier/figures.ts';
import { When } from '../kit/index.ts';

const width = 620;
const top = 34;
const thick = 30;

const signs = { green: '●', amber: '◆', red: '▲' } as const;
const words = {
  green: 'in time',
  amber: 'amber: dry it faster, look for damp places',
  red: 'red: mould may grow; call the owner',
} as const;

/** Hours since first wetting on a band that turns amber at 24 h and red at 48 h. */
export function WetClock(props: {
  readonly hours: number;
  readonly colour: 'green' | 'amber' | 'red';
  readonly since: string;
}) {
  const { hours, colour, since } = props;
  const end = Math.max(60, hours * 1.1);
  const x = scaleLinear().domain([0, end]).range([0, width]);
  const { amberHours: amber, redHours: red } = wetClockHours;
  const stretch = (from: number, until: number, name: string) => (
    <rect x={x(from)} width={x(until) - x(from)} y={top} height={thick} className={`clock-${name}`} />
  );
  return (
    <section className={`sect wet-clock clock-is-${colour}`} aria-labelledby="wet-clock">
      <h2 id="wet-clock">
        <span aria-hidden="true">{signs[colour]} </span>
        Wet for {figure(hours)} h
      </h2>
      <p>
        {words[colour]}{' '}
        <span className="why">
          since <When at={since} />
        </span>
      </p>
      <svg
        className="plot"
        viewBox={`0 0 ${width} 96`}
        role="img"
        aria-label={`Wet for ${figure(hours)} hours; amber from ${amber}, red from ${red} hours`}
      >
        {stretch(0, amber, 'green')}
        {stretch(amber, red, 'amber')}
        {stretch(red, end, 'red')}
        {[0, amber, red].map((at) => (
          <text key={at} x={x(at) + 4} y={top + thick + 22}>
            {at} h
          </text>
        ))}
        <path d={`M${x(hours)} ${top - 4}l-10 -18h20z`} className="clock-hand" />
        <line x1={x(hours)} x2={x(hours)} y1={top - 6} y2={top + thick + 4} className="clock-hand-line" />
      </svg>
      <p className="why">Dried within 24 to 48 h mould will in most cases not grow (US EPA, mould course).</p>
    </section>
  );
}
