import { useEffect, useState } from 'react';
import { compareNoteWords, compareSentence } from '../../text/colourWords.ts';
import { Notice } from '../kit/index.ts';
import { BeforeAfter } from './BeforeAfter.tsx';
import { ColourTable } from './ColourTable.tsx';
import type { ComparedHere } from './colourTalk.ts';

const unmeasuredWords = {
  'too-small': 'the place is too small',
  'not-in-both': 'the place does not show in both pictures',
  clipped: 'the place is too bright or too dark to be measured',
} as const;

/** Addresses of files that stay on this device, given back when they are no longer shown. */
function useAddresses({ before, after, map }: ComparedHere['shown']) {
  const [addresses, setAddresses] = useState<{ readonly [K in 'before' | 'after' | 'map']: string } | null>(
    null,
  );
  useEffect(() => {
    const made = {
      before: URL.createObjectURL(before),
      after: URL.createObjectURL(after),
      map: URL.createObjectURL(map),
    };
    setAddresses(made);
    return () => {
      for (const address of Object.values(made)) URL.revokeObjectURL(address);
    };
  }, [before, after, map]);
  return addresses;
}

/** What changed between two pictures: sentence, slider, map, colours, and what to know beside them. */
export function CompareResult({ compared }: { readonly compared: ComparedHere }) {
  const addresses = useAddresses(compared.shown);
  const { colours, unmeasured, notes, hueMoved } = compared;
  return (
    <div className="compareResult">
      <Notice tone={hueMoved.length > 0 ? 'stop' : 'ok'} title={compareSentence(compared)}>
        {hueMoved.length > 0 && <p>The hue moved at {hueMoved.join(', ')}: that is dye, not soil.</p>}
      </Notice>
      {addresses !== null && (
        <div className="comparedPictures">
          <BeforeAfter before={addresses.before} after={addresses.after} />
          <figure className="differences">
            <img
              src={addresses.map}
              alt={`Map of differences; half of the rug differs by more than ΔE00 ${compared.middleDeltaE.toFixed(1)}.`}
            />
            <figcaption className="why">
              Difference at each place, ΔE00. Half of the rug differs by more than{' '}
              {compared.middleDeltaE.toFixed(1)}; the card’s own greys, which cannot have changed, differ by{' '}
              {compared.control.deltaE.toFixed(1)}.
            </figcaption>
          </figure>
        </div>
      )}
      <ColourTable
        rows={colours.map(({ gradeInterval: [lowest, highest], ...row }) => ({
          ...row,
          gradeInterval: { lowest, highest },
        }))}
      />
      {unmeasured.map(({ name, why }) => (
        <p key={name} className="open-fact">
          {name} was not measured: {unmeasuredWords[why]}.
        </p>
      ))}
      <ul className="why">
        {notes.map((note) => (
          <li key={note}>{compareNoteWords[note]}</li>
        ))}
      </ul>
    </div>
  );
}
