import { useEffect } from 'react';
import { ringBell } from './bell.ts';
import { useKept } from './useKept.ts';
import { useNow } from './useNow.ts';

const ringEveryS = 12;

/** A span as `08:42`, or `1:08:42` from an hour on; negative when it has passed. */
export function spanWords(seconds: number): string {
  const whole = Math.floor(Math.abs(seconds));
  const two = (value: number) => String(value).padStart(2, '0');
  const hours = Math.floor(whole / 3600);
  const rest = `${two(Math.floor((whole % 3600) / 60))}:${two(whole % 60)}`;
  return `${seconds < 0 && whole > 0 ? '−' : ''}${hours > 0 ? `${hours}:` : ''}${rest}`;
}

interface TimerProps {
  /** Instant at which it began, by the record. */
  readonly startedAt: string;
  readonly minutes: number;
  readonly label: string;
  /** Small enough for a row of a list. */
  readonly isSmall?: boolean;
}

/** A running time. It is counted from the record, so a reload or another tablet shows the same; it rings when over. */
export function TimerFace({ startedAt, minutes, label, isSmall = false }: TimerProps) {
  const now = useNow();
  const [isSilenced, setSilenced] = useKept(`silenced/${startedAt}/${label}`, false);
  const left = Math.round(Date.parse(startedAt) / 1000 + minutes * 60 - now / 1000);
  const isOver = left <= 0;
  const rings = isOver && !isSilenced && -left % ringEveryS < 1;
  useEffect(() => {
    if (rings) ringBell();
  }, [rings]);
  return (
    <div className={`timer${isOver ? ' over' : ''}${isSmall ? ' small' : ''}`}>
      <div className="stepno">{label}</div>
      <div
        className="big"
        role="timer"
        aria-label={`${label}: ${isOver ? 'over since' : 'left'} ${spanWords(Math.abs(left))}`}
      >
        {spanWords(left)}
      </div>
      <div className="stepno">{isOver ? '▲ over: act now' : `of ${spanWords(minutes * 60)}`}</div>
      {isOver && !isSilenced ? (
        <button type="button" className="btn ghost" onClick={() => setSilenced(true)}>
          Silence the bell
        </button>
      ) : null}
    </div>
  );
}
