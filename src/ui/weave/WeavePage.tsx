import { useState } from 'react';
import { Link } from 'wouter';
import { useSettings } from '../call/index.ts';
import { useCards } from '../card/useCards.ts';
import { Busy, newId } from '../kit/index.ts';
import { PlacesCounter } from './PlacesCounter.tsx';
import type { CountedPlace } from './placeCount.ts';
import type { SaidNodes } from './rugCount.ts';

const noMarks: readonly never[] = [];
/** Nothing leaves this device: a photograph on the Bench only gets a name. */
const named = async () => ({ ok: true, value: { photo: newId() } }) as const;

/** Counts the knots on photographs of the back, in this page alone; a person confirms, taps or counts. */
export function WeavePage() {
  const { units } = useSettings();
  const { bars, isLoading } = useCards();
  const [places, setPlaces] = useState<readonly CountedPlace[]>([]);
  const [nodes, setNodes] = useState<SaidNodes>('unknown');
  return (
    <div className="page">
      <Link className="crumb" href="/bench">
        Bench
      </Link>
      <h1>Count a weave</h1>
      <p className="lead">
        From photographs of the back: flat, sharp, taken straight from above, a row of knots level in the
        picture, best with the <Link href="/bench/card">weave card</Link> on it. Nothing here is recorded or
        sent.
      </p>
      {isLoading ? (
        <Busy words="Looking up measured cards" />
      ) : (
        <PlacesCounter
          places={places}
          onPlaces={setPlaces}
          nodes={nodes}
          onNodes={setNodes}
          known={{ bars }}
          keepPhoto={named}
          units={units}
          areaM2={null}
          marks={noMarks}
        />
      )}
    </div>
  );
}
