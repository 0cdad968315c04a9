import { type ScaleLinear, scaleLinear } from 'd3-scale';
import { area, line } from 'd3-shape';
import type { RoomHour } from '../../core/drying/index.ts';
import type { AirAt } from '../../dossier/index.ts';
import { bindingWords } from '../../text/dryRoomWords.ts';
import { measureWords, shownIn, type UnitSystem, unitOf } from '../../units/index.ts';
import { figure } from '../dossier/figures.ts';
import { instantWords, Section } from '../kit/index.ts';
import { dayTicks } from './dayTicks.ts';
import { instantOf, useRoomView } from './roomView.ts';

const width = 620;
const height = 200;
const side = { left: 58, right: 12, top: 12, bottom: 36 };

interface Curve {
  readonly title: string;
  readonly unit: string;
  readonly of: (hour: RoomHour) => number;
  readonly read: (air: AirAt) => number | undefined;
  readonly level?: { readonly at: number; readonly words: string };
}

const curvesIn = (units: UnitSystem): readonly Curve[] => {
  const warm = (celsius: number) => shownIn('temperature', celsius, units);
  return [
    {
      title: 'Temperature',
      unit: unitOf('temperature', units),
      of: ({ airC }) => warm(airC),
      read: ({ airC }) => (airC === undefined ? undefined : warm(airC)),
    },
    {
      title: 'Humidity',
      unit: '% RH',
      of: ({ rh }) => rh * 100,
      read: ({ rh }) => (rh === undefined ? undefined : rh * 100),
      level: { at: 45, words: '45 % or less dries well' },
    },
  ];
};

/** The room's air measured and modelled, and the water it can take beside the water the rugs would give. */
export function AirPlot() {
  const { answer, now, zero, settings } = useRoomView();
  const { units } = settings;
  const water = (litresPerHour: number) => measureWords('waterPerHour', litresPerHour, units);
  if (answer === null) return null;
  const nowHour = (Date.parse(now) - Date.parse(zero)) / 3_600_000;
  const hours = answer.hourly.filter(({ hour }) => hour >= nowHour - 24);
  const present = hours.find(({ hour }) => hour >= nowHour) ?? hours.at(-1);
  if (present === undefined) return null;
  return (
    <Section title="The room’s air and its water">
      <p className="binding">
        <b>{sentence(bindingWords[present.binding])}</b>
      </p>
      <p>
        Now the room could take <b>{water(present.offeredLPerH)}</b>; the rugs would give{' '}
        <b>{water(present.demandedLPerH)}</b>.{' '}
        <span className="why">
          both at 45 % RH and the room’s temperature; machines take {water(present.machinesLPerH)}, air
          exchange {water(present.exchangeLPerH)} as it stands
        </span>
      </p>
      <div className="cols two">
        <WaterPlot hours={hours} nowHour={nowHour} />
        {curvesIn(units).map((curve) => (
          <AirCurve key={curve.title} curve={curve} hours={hours} nowHour={nowHour} />
        ))}
      </div>
      <p className="why">
        Dots are readings; the line is the model where nothing was measured. Hours{' '}
        {instantWords(instantOf(zero, hours[0]?.hour ?? 0))} to{' '}
        {instantWords(instantOf(zero, hours.at(-1)?.hour ?? 0))}.
      </p>
    </Section>
  );
}

const sentence = (words: string): string => `${words.slice(0, 1).toUpperCase()}${words.slice(1)}.`;

const xOf = (hours: readonly RoomHour[]) =>
  scaleLinear()
    .domain([hours[0]?.hour ?? 0, hours.at(-1)?.hour ?? 1])
    .range([side.left, width - side.right]);

/** Lines of a plot: levels with their figures, the midnights with the day that begins, and now. */
function Frame(props: {
  readonly x: ScaleLinear<number, number>;
  readonly y: ScaleLinear<number, number>;
  readonly nowHour: number;
}) {
  const { x, y, nowHour } = props;
  const { zero } = useRoomView();
  const [from = 0, until = 1] = x.domain();
  const at = x(nowHour);
  return (
    <>
      {y.ticks(3).map((level) => (
        <g key={level}>
          <line x1={side.left} x2={width - side.right} y1={y(level)} y2={y(level)} className="plotLevel" />
          <text x={side.left - 8} y={y(level) + 6} textAnchor="end">
            {figure(level, 2)}
          </text>
        </g>
      ))}
      {dayTicks(zero, from, until).map(({ hour, day }) => (
        <g key={hour}>
          <line x1={x(hour)} x2={x(hour)} y1={side.top} y2={height - side.bottom} className="plotLevel" />
          {Math.abs(x(hour) - at) < 46 ? null : (
            <text x={x(hour)} y={height - 8} textAnchor="middle">
              {day}
            </text>
          )}
        </g>
      ))}
      <line x1={at} x2={at} y1={side.top} y2={height - side.bottom} className="clockNow" />
      <text x={at} y={height - 8} textAnchor="middle">
        now
      </text>
    </>
  );
}

function WaterPlot({ hours, nowHour }: { readonly hours: readonly RoomHour[]; readonly nowHour: number }) {
  const x = xOf(hours);
  const { units } = useRoomView().settings;
  const shown = (litres: number) => shownIn('waterPerHour', Math.max(0, litres), units);
  const most = Math.max(0.1, ...hours.map((one) => shown(Math.max(one.offeredLPerH, one.demandedLPerH))));
  const y = scaleLinear()
    .domain([0, most])
    .range([height - side.bottom, side.top]);
  const offered = area<RoomHour>()
    .x(({ hour }) => x(hour))
    .y0(y(0))
    .y1(({ offeredLPerH }) => y(shown(offeredLPerH)))([...hours]);
  const demanded = line<RoomHour>()
    .x(({ hour }) => x(hour))
    .y(({ demandedLPerH }) => y(shown(demandedLPerH)))([...hours]);
  const unit = unitOf('waterPerHour', units);
  const words = `Water an hour the room can take and the rugs would give, up to ${figure(most, 1)} ${unit}`;
  return (
    <figure className="airPlot">
      <figcaption>Water an hour, {unit}: offered (field), demanded (dashed)</figcaption>
      <svg className="clockPlot" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={words}>
        <path d={offered ?? ''} className="dryLikely" />
        <path d={demanded ?? ''} className="demanded" />
        <Frame x={x} y={y} nowHour={nowHour} />
      </svg>
    </figure>
  );
}

/** Under its line, or over it where the plot ends close beneath. */
const levelWordsAt = (at: number): number => (at + 28 < height - side.bottom ? at + 20 : at - 8);

function AirCurve(props: {
  readonly curve: Curve;
  readonly hours: readonly RoomHour[];
  readonly nowHour: number;
}) {
  const { curve, hours, nowHour } = props;
  const { standing, zero } = useRoomView();
  const x = xOf(hours);
  const from = hours[0]?.hour ?? 0;
  const dots = standing.room.flatMap((air) => {
    const value = curve.read(air);
    const hour = (Date.parse(air.when) - Date.parse(zero)) / 3_600_000;
    return value === undefined || hour < from ? [] : [{ hour, value }];
  });
  const values = [...hours.map(curve.of), ...dots.map(({ value }) => value)];
  const low = Math.min(...values, curve.level?.at ?? Number.POSITIVE_INFINITY) - 2;
  const high = Math.max(...values, curve.level?.at ?? Number.NEGATIVE_INFINITY) + 2;
  const y = scaleLinear()
    .domain([low, high])
    .range([height - side.bottom, side.top]);
  const modelled = line<RoomHour>()
    .x(({ hour }) => x(hour))
    .y((one) => y(curve.of(one)))([...hours]);
  const range = `${figure(Math.min(...values), 0)} to ${figure(Math.max(...values), 0)} ${curve.unit}`;
  return (
    <figure className="airPlot">
      <figcaption>
        {curve.title}: {range}
      </figcaption>
      <svg
        className="clockPlot"
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={`${curve.title}: ${range}`}
      >
        {curve.level === undefined ? null : (
          <g>
            <rect
              x={side.left}
              width={width - side.left - side.right}
              y={y(curve.level.at)}
              height={Math.max(0, height - side.bottom - y(curve.level.at))}
              className="dryTarget"
            />
            <text x={width - side.right - 6} y={levelWordsAt(y(curve.level.at))} textAnchor="end">
              {curve.level.words}
            </text>
          </g>
        )}
        <path d={modelled ?? ''} className="dryMedian" />
        {dots.map(({ hour, value }) => (
          <circle key={hour} cx={x(hour)} cy={y(value)} r={4} className="plot-point" />
        ))}
        <Frame x={x} y={y} nowHour={nowHour} />
      </svg>
    </figure>
  );
}
