import { useState } from 'react';
import { Button, Choice, NumberField, Section } from '../kit/index.ts';
import type { Axis } from './placeCount.ts';

interface EyeCountProps {
  readonly isTapping: boolean;
  readonly tapped: number;
  /** Along which way the two taps seem to lie; null before both are there. */
  readonly axis: Axis | null;
  readonly isBusy: boolean;
  /** Whether a scale is known, without which a count by hand has no length. */
  readonly hasScale: boolean;
  readonly onStart: () => void;
  readonly onStop: () => void;
  /** The taps decide the factor, the picture refines within a tenth. */
  readonly onRefine: (repeats: number) => void;
  /** The person's own count stands as it is. */
  readonly onOwn: (repeats: number, axis: Axis) => void;
  /** Null when there is nothing to forget. */
  readonly onForget: (() => void) | null;
}

/** Counting by a person's own eye on the enlarged picture: the first, the last, and how many lie between. */
export function EyeCount(props: EyeCountProps) {
  const [between, setBetween] = useState<number | null>(null);
  const [said, setSaid] = useState<Axis | null>(null);
  const axis = said ?? props.axis;
  const isReady = props.tapped === 2 && between !== null;
  const stop = () => {
    setSaid(null);
    props.onStop();
  };
  return (
    <Section title="Count with your own eye">
      <p>
        Enlarge the picture, tap the first and the last of six to eleven columns in one row, or rows in one
        column, each in its middle, and say how many lie between.
      </p>
      {props.isTapping ? (
        <>
          <NumberField
            label="Between the two, without them"
            unit=""
            least={1}
            most={500}
            step={1}
            value={between}
            onChange={setBetween}
            hint="Tapped the first and the tenth: eight lie between."
          />
          {props.tapped < 2 ? null : (
            <Choice<Axis>
              label="You counted"
              options={[
                { value: 'weftwise', words: 'Columns', hint: 'across the rug, along a weft' },
                { value: 'warpwise', words: 'Rows', hint: 'along the rug, along a warp' },
              ]}
              value={axis}
              onChange={setSaid}
            />
          )}
          <div className="weaveTools">
            <Button
              isDisabled={!isReady}
              onPress={() => {
                if (between === null) return;
                props.onRefine(between + 1);
                setSaid(null);
              }}
            >
              Count with these
            </Button>
            <Button
              tone="ghost"
              isDisabled={!isReady || axis === null || !props.hasScale}
              onPress={() => {
                if (between === null || axis === null) return;
                props.onOwn(between + 1, axis);
                setSaid(null);
              }}
            >
              Keep my count as it is
            </Button>
            <Button tone="ghost" onPress={stop}>
              Leave it
            </Button>
          </div>
          <p className="why">
            “Count with these” lets your taps decide the factor and the picture the decimals.
            {props.hasScale ? '' : ' A count of your own needs the scale first.'}
          </p>
        </>
      ) : (
        <div className="weaveTools">
          <Button tone="ghost" isDisabled={props.isBusy} onPress={props.onStart}>
            Tap the first and the last
          </Button>
          {props.onForget === null ? null : (
            <Button tone="ghost" isDisabled={props.isBusy} onPress={props.onForget}>
              Forget the taps
            </Button>
          )}
        </div>
      )}
    </Section>
  );
}
