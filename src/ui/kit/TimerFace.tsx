import { useEffect } from 'react';
import { Button } from './Button.tsx';
import { ringBell } from './bell.ts';
import { spanWords } from './spanWords.ts';
import { useKept } from './useKept.ts';
import { useNow } from './useNow.ts';

const ringEveryS = 12;

interface TimerProps {
  /** Instant at which it began, by the record. */
  readonly startedAt: string;
  readonly minutes: number;
  readonly label: string;
}

/** A running time. It is counted from the record, so a reload or another tablet shows the same; it rings when over. */
export function TimerFace({ startedAt, minutes, label }: TimerProps) {
  const dueAt = Date.parse(startedAt) + minutes * 60_000;
  return <DueFace dueAt={dueAt} label={label} of={`of ${spanWords(minutes * 60)}`} />;
}

interface DueProps {
  /** When it is over [ms]. */
  readonly dueAt: number;
  readonly label: string;
  /** What stands under the figure while it runs. */
  readonly of: string;
  /** Small enough for a row of a list. */
  readonly isSmall?: boolean;
}

/** Counts down to an instant, rings every few seconds once it has passed, and says so for the eye as well. */
export function DueFace({ dueAt, label, of, isSmall = false }: DueProps) {
  const now = useNow();
  const [isSilenced, setSilenced] = useKept(`silenced/${label}/${dueAt}`, false);
  const left = Math.round((dueAt - now) / 1000);
  const isOver = left <= 0;
  const rings = isOver && !isSilenced && -left % ringEveryS < 1;
  useEffect(() => {
    if (rings) ringBell();
  }, [rings]);
  return (
    <div className={`timer${isOver ? ' over' : ''}${isSmall ? ' small' : ''}`}>
      {label === '' ? null : <div className="stepno">{label}</div>}
      <div
        className="big"
        role="timer"
        aria-label={`${label === '' ? '' : `${label}, `}${isOver ? 'over since' : 'left'} ${spanWords(Math.abs(left))}`}
      >
        {spanWords(left)}
      </div>
      <div className="stepno">{isOver ? '▲ over, act now' : of}</div>
      {isOver && !isSilenced ? (
        <div className="onRow">
          <Button tone="ghost" onPress={() => setSilenced(true)}>
            Silence the bell
          </Button>
        </div>
      ) : null}
    </div>
  );
}
