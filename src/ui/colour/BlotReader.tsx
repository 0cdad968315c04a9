import { useCallback, useEffect, useRef, useState } from 'react';
import type { BlotPlaces, CardBlot, ColourProblem } from '../../core/colour/index.ts';
import type { Result } from '../../units/index.ts';
import { Busy, Button, Notice, ProblemNotice } from '../kit/index.ts';
import { BlotResult } from './BlotResult.tsx';
import { BlotStage } from './BlotStage.tsx';
import { CardMissing } from './CardMissing.tsx';
import './colour.css';
import type { ColourTold, Slot } from './colourTalk.ts';
import { firstPlaces } from './places.ts';
import { useColourWorker } from './useColourWorker.ts';

/** A reading with what the record keeps of how it was made. */
export interface BlotMade {
  readonly reading: CardBlot;
  readonly card: string;
  readonly pictures: 'one' | 'before and after';
  /** Size of the picture its places lie on. */
  readonly widthPx: number;
  readonly heightPx: number;
}

/** How long a moved place rests before it is measured [ms]. */
const restMs = 250;

/** Opens the pictures of a blot, finds card and blot, lets a person move the places, and grades. */
export function BlotReader(props: {
  readonly before: Blob | null;
  readonly after: Blob | null;
  readonly onMade: (made: BlotMade | null) => void;
}) {
  const { before, after, onMade } = props;
  const [blot, setBlot] = useState<Result<CardBlot, ColourProblem> | 'not-measured' | null>(null);
  const [places, setPlaces] = useState<BlotPlaces | null>(null);
  const run = useRef(0);
  const { pictures, ask } = useColourWorker((told: ColourTold) => {
    if (told.kind === 'blot' && told.run === run.current) setBlot(told.blot);
    if (told.kind === 'not-measured') setBlot('not-measured');
  });
  const files = { before, after };
  const isPair = before !== null;
  const ofPair = { before: 'the picture from before the test', after: 'the picture of the blot' } as const;
  const pictureOf = (slot: Slot) => (isPair ? ofPair[slot] : 'this picture');
  const begin = useCallback(
    (slot: Slot, file: Blob | null) => {
      setBlot(null);
      setPlaces(null);
      if (file !== null) ask({ kind: 'open', slot, file, known: {} });
    },
    [ask],
  );
  useEffect(() => begin('before', before), [before, begin]);
  useEffect(() => begin('after', after), [after, begin]);
  const opened = (slot: Slot) => {
    const picture = files[slot] === null ? undefined : pictures[slot];
    return typeof picture === 'object' ? picture : null;
  };
  const [earlier, later] = [opened('before'), opened('after')];
  const card = later?.card.ok === true ? later.card.value : null;
  const isReady = card !== null && (!isPair || earlier?.card.ok === true);
  useEffect(() => {
    run.current += 1;
    setBlot(null);
    if (!isReady) return;
    const asked = { kind: 'blot', run: run.current, isPair, places } as const;
    const resting = setTimeout(() => ask(asked), places === null ? 0 : restMs);
    return () => clearTimeout(resting);
  }, [isReady, isPair, places, ask]);

  const read = blot !== null && blot !== 'not-measured' && blot.ok ? blot.value : null;
  useEffect(() => {
    onMade(
      read === null || card === null || later === null
        ? null
        : {
            reading: read,
            card: card.serial,
            pictures: isPair ? 'before and after' : 'one',
            widthPx: later.widthPx,
            heightPx: later.heightPx,
          },
    );
  }, [read, card, later, isPair, onMade]);

  if (after === null) return null;
  const waiting = (['before', 'after'] as const).some((slot) => pictures[slot] === 'opening');
  return (
    <div className="blotReader">
      {waiting && <Busy words="Opening the photograph and looking for the card" />}
      {(['before', 'after'] as const).map((slot) =>
        files[slot] !== null && pictures[slot] === 'not-opened' ? (
          <Notice
            key={slot}
            tone="stop"
            title={`The file for ${pictureOf(slot)} cannot be opened as a picture.`}
          >
            <p>Take the photograph with this device, or choose a JPEG, PNG or WebP.</p>
          </Notice>
        ) : null,
      )}
      {later !== null && !later.card.ok && (
        <CardMissing problem={later.card.problem} lying="on the cloth" picture={pictureOf('after')} />
      )}
      {earlier !== null && !earlier.card.ok && (
        <>
          <CardMissing problem={earlier.card.problem} lying="on the cloth" picture={pictureOf('before')} />
          <p>Or leave it out, and grade from one picture.</p>
        </>
      )}
      {later !== null && card !== null && (
        <>
          <BlotStage picture={later} card={card} found={read} places={places} onPlaces={setPlaces} />
          {isReady && blot === null && <Busy words="Measuring the cloth" />}
          {blot === 'not-measured' && (
            <Notice tone="stop" title="The measuring stopped.">
              <p>Take the photograph again, a little nearer and straighter.</p>
            </Notice>
          )}
          {blot !== null && blot !== 'not-measured' && !blot.ok && <ProblemNotice problem={blot.problem} />}
          {places === null ? (
            <Button tone="ghost" onPress={() => setPlaces(firstPlaces(card, read))}>
              {read === null ? 'Show the places myself' : 'The places lie wrong: move them'}
            </Button>
          ) : (
            <Button tone="ghost" onPress={() => setPlaces(null)}>
              Find the places again
            </Button>
          )}
          {read !== null && <BlotResult reading={read} card={card.serial} />}
        </>
      )}
    </div>
  );
}
