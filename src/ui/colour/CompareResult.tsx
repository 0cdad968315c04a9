import { useEffect, useState } from 'react';
import { compareNoteWords, compareSentence } from '../../text/colourWords.ts';
import { ComparedView } from './ComparedView.tsx';
import type { ComparedHere } from './colourTalk.ts';

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

/** A comparison made just now, not recorded yet. */
export function CompareResult({ compared }: { readonly compared: ComparedHere }) {
  const addresses = useAddresses(compared.shown);
  if (addresses === null) return null;
  const { colours, unmeasured, notes, middleDeltaE, control } = compared;
  return (
    <div className="compareResult">
      <ComparedView
        sentence={compareSentence(compared)}
        shown={addresses}
        middleDeltaE={middleDeltaE}
        controlDeltaE={control.deltaE}
        colours={colours.map(({ gradeInterval: [lowest, highest], ...row }) => ({
          ...row,
          gradeInterval: { lowest, highest },
        }))}
        unmeasured={unmeasured}
      />
      <ul className="why">
        {notes.map((note) => (
          <li key={note}>{compareNoteWords[note]}</li>
        ))}
      </ul>
    </div>
  );
}
