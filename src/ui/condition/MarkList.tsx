import type { RugFrame } from '../../core/condition/index.ts';
import { placeWords } from '../../text/conditionWords.ts';
import { Button, Empty } from '../kit/index.ts';
import type { Mark } from './surface.ts';

/** The size of a recorded mark in words; empty where none was given. */
const markSize = ({ areaCm2, lengthCm, count }: Mark): string =>
  [
    ...(areaCm2 === undefined
      ? []
      : [areaCm2 >= 1000 ? `${(areaCm2 / 10_000).toFixed(2)} m²` : `${areaCm2} cm²`]),
    ...(lengthCm === undefined ? [] : [`${lengthCm} cm`]),
    ...(count === undefined ? [] : [`${count} of them`]),
  ].join(', ');

/** A mark on one line: word, grade, size, whether it grows. */
export const markLine = (mark: Mark): string =>
  [
    mark.word === 'stain' && mark.stain !== undefined && mark.stain !== 'unknown'
      ? `stain, ${mark.stain}`
      : mark.word,
    `grade ${mark.grade}`,
    markSize(mark),
    mark.activity === 'unknown' ? '' : mark.activity,
  ]
    .filter((part) => part !== '')
    .join(' · ');

/** The marks of a rug, numbered as on its pictures. */
export function MarkList(props: {
  readonly marks: readonly Mark[];
  readonly frame: RugFrame | null;
  readonly chosen: string | null;
  readonly onChoose: (mark: string) => void;
  /** Opens a mark to change it; absent where that is not possible. */
  readonly onOpen?: (mark: Mark) => void;
}) {
  if (props.marks.length === 0)
    return (
      <Empty>
        <p>No marks yet. What is not put down here cannot be shown to have been there before.</p>
      </Empty>
    );
  return (
    <ol className="markList">
      {props.marks.map((mark, index) => (
        <li key={mark.mark} className={mark.mark === props.chosen ? 'chosen' : ''}>
          <button
            type="button"
            className="markLine"
            aria-pressed={mark.mark === props.chosen}
            onClick={() => props.onChoose(mark.mark)}
          >
            <span className="number">{index + 1}</span>
            <span>
              {markLine(mark)}
              <span className="why">
                {props.frame !== null && mark.pointsMm.length > 0
                  ? placeWords(mark.pointsMm, props.frame, mark.side)
                  : mark.side === 'both'
                    ? 'through both sides'
                    : mark.side}
              </span>
            </span>
          </button>
          {props.onOpen === undefined ? null : (
            <Button tone="ghost" label={`Change mark ${index + 1}`} onPress={() => props.onOpen?.(mark)}>
              Change
            </Button>
          )}
        </li>
      ))}
    </ol>
  );
}
