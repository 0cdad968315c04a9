import { useCallback, useState } from 'react';
import { Link } from 'wouter';
import { BlotReader } from '../colour/BlotReader.tsx';
import { FileTaker } from '../colour/FileTaker.tsx';
import { Button } from '../kit/index.ts';

/** Grades a blot from a photograph, in this page alone. */
export function BlotPage() {
  const [before, setBefore] = useState<File | null>(null);
  const [after, setAfter] = useState<File | null>(null);
  const nothing = useCallback(() => {}, []);
  return (
    <div className="page">
      <Link className="crumb" href="/bench">
        Bench
      </Link>
      <h1>Grade a blot</h1>
      <p className="lead">
        Lay the white cloth flat under a weave card so that the blot and clean cloth around it show in the
        window. Even daylight, no flash. Nothing here is recorded or sent.
      </p>
      <div className="takers">
        <FileTaker
          label={after === null ? 'Photograph of the blot' : 'Another photograph of the blot'}
          tone={after === null ? 'act' : 'ghost'}
          onFile={setAfter}
        />
        <FileTaker
          label={before === null ? 'The cloth before the test, if there is one' : 'Another one from before'}
          tone="ghost"
          onFile={setBefore}
        />
        {before !== null && (
          <Button tone="ghost" onPress={() => setBefore(null)}>
            Leave out the one from before
          </Button>
        )}
      </div>
      {before !== null && after === null && <p className="why">Now the photograph of the blot itself.</p>}
      <BlotReader before={before} after={after} onMade={nothing} />
    </div>
  );
}
