import { useCallback, useState } from 'react';
import { Link } from 'wouter';
import { CompareReader } from '../colour/CompareReader.tsx';
import type { NamedColour } from '../colour/comparePlaces.ts';
import { FileTaker } from '../colour/FileTaker.tsx';
import { Button, LineField } from '../kit/index.ts';

/** Compares two photographs of one rug, in this page alone. */
export function ComparePage() {
  const [before, setBefore] = useState<File | null>(null);
  const [after, setAfter] = useState<File | null>(null);
  const [colours, setColours] = useState<readonly NamedColour[]>([]);
  const [name, setName] = useState('');
  const nothing = useCallback(() => {}, []);
  const isTaken = colours.some((known) => known.name === name.trim());
  return (
    <div className="page">
      <Link className="crumb" href="/bench">
        Bench
      </Link>
      <h1>Compare before and after</h1>
      <p className="lead">
        Two photographs of the same rug, each with the same weave card lying on it, or with its four loose
        pieces beside the corners. Even daylight, taken from above. Nothing here is recorded or sent.
      </p>
      <div className="takers">
        <FileTaker
          label={before === null ? 'Photograph from before' : 'Another photograph from before'}
          tone={before === null ? 'act' : 'ghost'}
          onFile={setBefore}
        />
        <FileTaker
          label={after === null ? 'Photograph from after' : 'Another photograph from after'}
          tone={after === null ? 'act' : 'ghost'}
          onFile={setAfter}
        />
      </div>
      {before !== null && after !== null && (
        <div className="withButton">
          <LineField
            label="Name a colour to follow"
            value={name}
            onChange={setName}
            hint="red, field"
            problem={isTaken ? `“${name.trim()}” is named already.` : null}
          />
          <Button
            tone="ghost"
            isDisabled={name.trim() === '' || isTaken}
            onPress={() => {
              setColours([...colours, { name: name.trim() }]);
              setName('');
            }}
          >
            Add the colour
          </Button>
        </div>
      )}
      <CompareReader before={before} after={after} colours={colours} onMade={nothing} />
    </div>
  );
}
