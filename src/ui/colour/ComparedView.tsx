import type { ReactNode } from 'react';
import { Notice } from '../kit/index.ts';
import { BeforeAfter } from './BeforeAfter.tsx';
import { ColourTable, type ColourTold } from './ColourTable.tsx';

const unmeasuredWords: Readonly<Record<string, string>> = {
  'too-small': 'the place is too small',
  'not-in-both': 'the place does not show in both pictures',
  clipped: 'the place is too bright or too dark to be measured',
};

/** What changed between two pictures: sentence, slider, map, colours. */
export function ComparedView(props: {
  readonly sentence: string;
  /** Beneath the sentence. */
  readonly children?: ReactNode;
  /** Addresses of the pictures, and of the map with its scale. */
  readonly shown: { readonly before: string; readonly after: string; readonly map: string };
  readonly middleDeltaE: number;
  readonly controlDeltaE: number;
  readonly colours: readonly ColourTold[];
  readonly unmeasured: readonly { readonly name: string; readonly why: string }[];
}) {
  const { shown, middleDeltaE, controlDeltaE, colours, unmeasured } = props;
  const moved = colours.filter(({ hueMoved }) => hueMoved).map(({ name }) => name);
  return (
    <>
      <Notice tone={moved.length > 0 ? 'stop' : 'ok'} title={props.sentence}>
        {moved.length > 0 && <p>The hue moved at {moved.join(', ')}: that is dye, not soil.</p>}
        {props.children}
      </Notice>
      <div className="comparedPictures">
        <BeforeAfter before={shown.before} after={shown.after} />
        <figure className="differences">
          <img
            src={shown.map}
            alt={`Map of differences; half of the rug differs by more than ΔE00 ${middleDeltaE.toFixed(1)}.`}
          />
          <figcaption className="why">
            Difference at each place, ΔE00. Half of the rug differs by more than {middleDeltaE.toFixed(1)},
            while the card’s own greys, which cannot have changed, differ by {controlDeltaE.toFixed(1)}.
          </figcaption>
        </figure>
      </div>
      <ColourTable rows={colours} />
      {unmeasured.map(({ name, why }) => (
        <p key={name} className="open-fact">
          {name} was not measured: {unmeasuredWords[why] ?? why}.
        </p>
      ))}
    </>
  );
}
