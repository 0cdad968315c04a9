import { useCallback, useEffect, useRef, useState } from 'react';
import type { ColourProblem } from '../../core/colour/index.ts';
import type { Result } from '../../units/index.ts';
import { Busy, Button, Notice, ProblemNotice } from '../kit/index.ts';
import { CardMissing } from './CardMissing.tsx';
import { AlignBy, ColoursOn, CornersOn } from './ComparePlaces.tsx';
import { CompareResult } from './CompareResult.tsx';
import './colour.css';
import type { ComparedHere, Slot } from './colourTalk.ts';
import { areasOf, cornersIn, firstCorners, type NamedColour, type Share } from './comparePlaces.ts';
import { useColourWorker } from './useColourWorker.ts';

const slots = ['before', 'after'] as const;
type CornersBySlot = Readonly<Record<Slot, readonly Share[]>>;

/** A comparison with what the record keeps of how it was made. */
export interface ComparisonMade {
  readonly compared: ComparedHere;
  readonly cards: Readonly<Record<Slot, string>>;
  /** Null where the card aligned the pictures. */
  readonly corners: CornersBySlot | null;
}

/** Opens two pictures of one rug, lets a person show corners and colours, and compares them. */
export function CompareReader(props: {
  readonly before: Blob | null;
  readonly after: Blob | null;
  readonly colours: readonly NamedColour[];
  /** Corners that were tapped already. */
  readonly knownBefore?: readonly Share[] | undefined;
  readonly knownAfter?: readonly Share[] | undefined;
  readonly onMade: (made: ComparisonMade | null) => void;
}) {
  const { before, after, colours, knownBefore = firstCorners, knownAfter = firstCorners, onMade } = props;
  const [chosenBy, setChosenBy] = useState<'corners' | 'card'>('corners');
  const [moved, setMoved] = useState<Partial<CornersBySlot>>({});
  const [places, setPlaces] = useState<Readonly<Record<string, Share>>>({});
  const [isBusy, setBusy] = useState(false);
  const [answer, setAnswer] = useState<Result<ComparedHere, ColourProblem> | 'not-measured' | null>(null);
  const run = useRef(0);
  const { pictures, ask } = useColourWorker((told) => {
    if (told.kind === 'compared' && told.run !== run.current) return;
    if (told.kind !== 'compared' && told.kind !== 'not-measured') return;
    setBusy(false);
    setAnswer(told.kind === 'compared' ? told.compared : 'not-measured');
  });
  /** Whatever changes the question makes an older answer worthless. */
  const forget = useCallback(() => {
    run.current += 1;
    setAnswer(null);
    setBusy(false);
  }, []);
  useEffect(() => {
    forget();
    setMoved({});
    setPlaces({});
    if (before !== null) ask({ kind: 'open', slot: 'before', file: before, known: { takesLoose: true } });
  }, [before, ask, forget]);
  useEffect(() => {
    forget();
    setMoved((corners) => (corners.before === undefined ? {} : { before: corners.before }));
    if (after !== null) ask({ kind: 'open', slot: 'after', file: after, known: { takesLoose: true } });
  }, [after, ask, forget]);

  const opened = (slot: Slot) => {
    const picture = pictures[slot];
    return typeof picture === 'object' ? picture : null;
  };
  const [earlier, later] = [opened('before'), opened('after')];
  // Loose pieces are laid by hand: where they lie says nothing of how the pictures lie on each other.
  const isLaidLoose = [earlier, later].some(
    (picture) => picture?.card.ok && picture.card.value.form === 'loose',
  );
  const alignBy = isLaidLoose ? 'corners' : chosenBy;
  const corners = { before: moved.before ?? knownBefore, after: moved.after ?? knownAfter };
  const cards =
    earlier?.card.ok === true && later?.card.ok === true
      ? { before: earlier.card.value.serial, after: later.card.value.serial }
      : null;
  const made = answer !== null && answer !== 'not-measured' && answer.ok ? answer.value : null;
  const [cardBefore, cardAfter] = [cards?.before, cards?.after];
  useEffect(() => {
    onMade(
      made === null || cardBefore === undefined || cardAfter === undefined
        ? null
        : {
            compared: made,
            cards: { before: cardBefore, after: cardAfter },
            corners:
              alignBy === 'card'
                ? null
                : { before: moved.before ?? knownBefore, after: moved.after ?? knownAfter },
          },
    );
  }, [made, cardBefore, cardAfter, alignBy, moved, knownBefore, knownAfter, onMade]);

  const compare = () => {
    if (earlier === null || later === null) return;
    const there = {
      before: cornersIn(corners.before, earlier),
      after: cornersIn(corners.after, later),
    };
    if (there.before === null || there.after === null) return;
    forget();
    setBusy(true);
    ask({
      kind: 'compare',
      run: run.current,
      corners: alignBy === 'card' ? null : { before: there.before, after: there.after },
      colours: areasOf(colours, places, earlier),
    });
  };
  const waiting = slots.some((slot) => pictures[slot] === 'opening');
  const unshown = colours.filter(({ name }) => places[name] === undefined);
  return (
    <div className="blotReader">
      {waiting && <Busy words="Opening the photographs and looking for the cards" />}
      {slots.map((slot) => {
        const picture = pictures[slot];
        if (picture === 'not-opened')
          return (
            <Notice
              key={slot}
              tone="stop"
              title={`The file from ${slot} the work cannot be opened as a picture.`}
            >
              <p>Take the photograph with this device, or choose a JPEG, PNG or WebP.</p>
            </Notice>
          );
        if (typeof picture !== 'object' || picture.card.ok) return null;
        const from = `the picture from ${slot} the work`;
        return <CardMissing key={slot} problem={picture.card.problem} lying="on the rug" picture={from} />;
      })}
      {earlier !== null && later !== null && cards !== null && (
        <>
          {isLaidLoose ? (
            <p>
              The card lies in loose pieces, so the pictures are laid over each other by the rug’s corners.
            </p>
          ) : (
            <AlignBy
              value={alignBy}
              onChange={(value) => {
                forget();
                setChosenBy(value);
              }}
            />
          )}
          {alignBy === 'corners' && (
            <div className="sideBySide">
              {slots.map((slot) => (
                <CornersOn
                  key={slot}
                  slot={slot}
                  picture={slot === 'before' ? earlier : later}
                  corners={corners[slot]}
                  onCorners={(next) => {
                    forget();
                    setMoved((known) => ({ ...known, [slot]: next }));
                  }}
                />
              ))}
            </div>
          )}
          {colours.length > 0 && (
            <>
              <p>
                <b>Where each colour is measured</b>
              </p>
              <p className="why">
                Choose a colour, then tap a clean, even place of it on the picture from before. A colour not
                shown is left out.
              </p>
              <ColoursOn
                picture={earlier}
                colours={colours}
                places={places}
                onPlaces={(next) => {
                  forget();
                  setPlaces(next);
                }}
              />
            </>
          )}
          {unshown.length > 0 && unshown.length < colours.length && (
            <p className="why">Not shown yet: {unshown.map(({ name }) => name).join(', ')}.</p>
          )}
          <Button wide isDisabled={isBusy} onPress={compare}>
            Compare
          </Button>
          {isBusy && <Busy words="Laying the pictures over each other and comparing them" />}
          {answer === 'not-measured' && (
            <Notice tone="stop" title="The comparing stopped.">
              <p>Set the corners again, or take the pictures again, nearer and straighter.</p>
            </Notice>
          )}
          {answer !== null && answer !== 'not-measured' && !answer.ok && (
            <ProblemNotice problem={answer.problem} />
          )}
          {made !== null && <CompareResult compared={made} />}
        </>
      )}
    </div>
  );
}
