import type { RugFrame, RugPoint } from '../../core/condition/index.ts';
import { tapeUncertaintyMm } from '../../core/condition/index.ts';
import { Button, Choice, NumberField, ProblemNotice } from '../kit/index.ts';
import { type MarkDraft, placeProblem } from './markDraft.ts';

const shapes = [
  { value: 'point', words: 'A point', hint: 'one place' },
  { value: 'line', words: 'A line', hint: 'two places or more' },
  { value: 'polygon', words: 'An outline', hint: 'three corners or more' },
] as const;

const sides = [
  { value: 'face', words: 'Face' },
  { value: 'back', words: 'Back' },
  { value: 'both', words: 'Through both' },
] as const;

/** One place while it is typed; a number that is missing is null. */
export interface TypedPlace {
  readonly key: string;
  readonly xMm: number | null;
  readonly yMm: number | null;
}

export const placesOf = (points: readonly RugPoint[]): readonly TypedPlace[] =>
  points.map((point, index) => ({ ...point, key: String(index) }));

const finished = (places: readonly TypedPlace[]): readonly RugPoint[] =>
  places.flatMap(({ xMm, yMm }) => (xMm === null || yMm === null ? [] : [{ xMm, yMm }]));

/** Places a mark by numbers: no picture and no pointing needed. */
export function PlaceFields(props: {
  readonly draft: MarkDraft;
  readonly frame: RugFrame | null;
  readonly places: readonly TypedPlace[];
  readonly onChange: (draft: MarkDraft, places: readonly TypedPlace[]) => void;
}) {
  const { draft, frame, places } = props;
  const change = (next: readonly TypedPlace[], shape = draft.shape) => {
    const pointsMm = finished(next);
    const pointingMm = pointsMm.map(() => tapeUncertaintyMm / 2);
    props.onChange({ ...draft, shape, pointsMm, pointingMm, drawn: null }, next);
  };
  const blank = (key: string): TypedPlace => ({ key, xMm: null, yMm: null });
  const withLeast = (shape: MarkDraft['shape']): readonly TypedPlace[] => {
    const least = shape === 'polygon' ? 3 : shape === 'line' ? 2 : 1;
    const kept = shape === 'point' ? places.slice(0, 1) : places;
    const missing = Array.from({ length: Math.max(0, least - kept.length) }, (_, index) =>
      blank(`${shape} ${kept.length + index}`),
    );
    return [...kept, ...missing];
  };
  const isMany = draft.shape !== 'point';
  return (
    <div className="form">
      <p className="hint">
        Lay the rug face up with the pile lying toward you. Measure from the lower left corner of the woven
        body: across to the right, then up. Use the same corner for marks on the back.
        {frame === null
          ? ''
          : ` This rug is ${Math.round(frame.widthMm)} mm across and ${Math.round(frame.lengthMm)} mm long.`}
      </p>
      <Choice
        label="Shape"
        columns={3}
        options={shapes}
        value={draft.shape}
        onChange={(shape) => change(withLeast(shape), shape)}
      />
      <Choice
        label="Side"
        columns={3}
        options={sides}
        value={draft.side}
        onChange={(side) => props.onChange({ ...draft, side }, places)}
      />
      {places.map((place, index) => {
        const put = (part: Partial<TypedPlace>) =>
          change(places.map((other) => (other === place ? { ...place, ...part } : other)));
        const name = isMany ? `Place ${index + 1}: ` : '';
        return (
          <fieldset className="place" key={place.key}>
            <legend className="unseen">Place {index + 1}</legend>
            <NumberField
              label={`${name}across from the left`}
              unit="mm"
              least={-1000}
              most={50_000}
              value={place.xMm}
              onChange={(xMm) => put({ xMm })}
            />
            <NumberField
              label={`${name}up from the start`}
              unit="mm"
              least={-1000}
              most={50_000}
              value={place.yMm}
              onChange={(yMm) => put({ yMm })}
            />
            {isMany && places.length > (draft.shape === 'line' ? 2 : 3) ? (
              <Button tone="ghost" onPress={() => change(places.filter((other) => other !== place))}>
                Take place {index + 1} away
              </Button>
            ) : null}
          </fieldset>
        );
      })}
      {isMany ? (
        <Button
          tone="ghost"
          onPress={() => change([...places, blank(`more ${places.length} ${draft.mark}`)])}
        >
          One more place
        </Button>
      ) : null}
      <ProblemNotice problem={placeProblem(draft, frame)} />
    </div>
  );
}
