import { useRef } from 'react';
import { wetMinutesAhead, wetMinutesOf } from '../../dossier/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { useNow } from '../kit/index.ts';
import { useWidth } from './useWidth.ts';
import { VerdictLine } from './VerdictLine.tsx';
import { wetVerdict } from './wetVerdict.ts';

const height = 74;
const bar = { top: 26, height: 30 };

/** Wet minutes used, those the rest of the plan still takes, and the plan's cap. */
export function WetMinutesPlot() {
  const { standing } = useDossier();
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidth(frame);
  const now = new Date(useNow(15_000)).toISOString();
  const minutes = wetMinutesOf(standing, now);
  if (minutes === null || !minutes.isRunning) return null;
  const { used, allowed } = minutes;
  const ahead = wetMinutesAhead(standing, now);
  const most = Math.max(allowed, used + ahead.most) * 1.08;
  const x = (value: number) => (value / most) * width;
  const whole = (value: number) => Math.round(value);
  const need =
    whole(ahead.least) === whole(ahead.most)
      ? whole(ahead.least)
      : `${whole(ahead.least)} to ${whole(ahead.most)}`;
  return (
    <figure className="bath-plot">
      <figcaption>
        <b>{whole(used)} wet minutes used</b> of {whole(allowed)}; the rest of the plan takes {need} min until
        it is extracted.
        <VerdictLine verdict={wetVerdict(used, allowed, ahead)} isQuiet />
      </figcaption>
      <div ref={frame}>
        <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
          <rect className="bath-zone-ok" x={0} width={x(allowed)} y={bar.top - 8} height={bar.height + 16} />
          <rect
            className="bath-zone-stop"
            x={x(allowed)}
            width={width - x(allowed)}
            y={bar.top - 8}
            height={bar.height + 16}
          />
          <rect className="wet-used" x={0} width={x(used)} y={bar.top} height={bar.height} />
          <rect className="wet-most" x={x(used)} width={x(ahead.most)} y={bar.top} height={bar.height} />
          <rect className="wet-least" x={x(used)} width={x(ahead.least)} y={bar.top} height={bar.height} />
          <line className="wet-cap" x1={x(allowed)} x2={x(allowed)} y1={bar.top - 10} y2={height - 6} />
          <text x={x(allowed) - 6} y={14} textAnchor="end">
            {whole(allowed)} min allowed
          </text>
        </svg>
      </div>
    </figure>
  );
}
