import { useState } from 'react';
import { sureEnough } from '../../dossier/index.ts';
import type { CardKnown } from '../card/cardInPicture.ts';
import { heldOn, type View, wholeView } from '../condition/view.ts';
import { Busy, Button, LineField, Notice, ProblemNotice, Section } from '../kit/index.ts';
import { CardNotice } from './CardNotice.tsx';
import { EyeCount } from './EyeCount.tsx';
import { OpenReadings, PlaceFound } from './PlaceFound.tsx';
import { axisOfTaps, type CountedPlace, notYet, placeScale } from './placeCount.ts';
import type { SaidNodes } from './rugCount.ts';
import { ScaleSection } from './ScaleSection.tsx';
import { type PlaceCount, usePlaceCount } from './usePlaceCount.ts';
import { WeaveStage } from './WeaveStage.tsx';
import type { WeaveTap } from './weaveScale.ts';

interface PlaceCounterProps {
  readonly file: File;
  readonly known: CardKnown;
  readonly place: string;
  readonly onPlace: (place: string) => void;
  readonly nodes: SaidNodes;
  readonly isKeeping: boolean;
  readonly onKeep: (place: Omit<CountedPlace, 'key' | 'photo'>) => void;
  readonly onLeave: () => void;
}

type Tapping = 'scale' | 'count' | null;

/** The view that shows what was counted, as large as it goes. */
function viewOfCount({ counting, picture }: PlaceCount): View | null {
  if (picture === null) return null;
  if (counting === null) return wholeView(picture);
  const { x, y, width, height } = counting.window;
  const wide = 1.04 * Math.max(width, (height * picture.widthPx) / picture.heightPx);
  const high = (wide * picture.heightPx) / picture.widthPx;
  return heldOn({ width: wide, x: x + width / 2 - wide / 2, y: y + height / 2 - high / 2 }, picture);
}

/** One photograph of one place, from the picture to a count a person vouches for. */
export function PlaceCounter(props: PlaceCounterProps) {
  const at = usePlaceCount(props.file, props.known, props.nodes);
  const [view, setView] = useState<View | null>(null);
  const [tapping, setTapping] = useState<Tapping>(null);
  const [taps, setTaps] = useState<readonly WeaveTap[]>([]);
  const { picture, card, counting, counted, doing } = at;
  const [first, second] = taps;
  const stop = () => {
    setTapping(null);
    setTaps([]);
  };
  const start = (what: Tapping) => {
    setTaps([]);
    setTapping(what);
  };
  const tap = (tapped: WeaveTap) => {
    const next = taps.length >= 2 ? [tapped] : [...taps, tapped];
    const [a, b] = next;
    if (tapping === 'scale' && a !== undefined && b !== undefined) {
      at.typeScale({ taps: [a, b] });
      stop();
    } else setTaps(next);
  };
  const shown = view ?? viewOfCount(at);
  if (card?.ok === false && card.problem.code === 'card-other-tag')
    return (
      <>
        <ProblemNotice problem={card.problem} />
        <Button tone="ghost" onPress={props.onLeave}>
          Leave this photograph out
        </Button>
      </>
    );
  return (
    <>
      {doing === null ? null : (
        <Busy words={doing === 'opening' ? 'Opening the photograph' : 'Counting columns and rows'} />
      )}
      {at.failed === null ? null : <Failed failed={at.failed} />}
      {counted?.ok === false ? <ProblemNotice problem={counted.problem} /> : null}
      {picture === null || shown === null ? null : (
        <div className="cols two">
          <div>
            <Section title="The photograph">
              {tapping === null ? null : (
                <p className="hint" role="status">
                  {tapping === 'scale'
                    ? `Tap the ${taps.length === 0 ? 'first' : 'second'} end of the known length.`
                    : taps.length < 2
                      ? `Tap the ${taps.length === 0 ? 'first' : 'last'} one in its middle.`
                      : 'Say below how many lie between.'}
                </p>
              )}
              <WeaveStage
                picture={picture}
                view={shown}
                onView={setView}
                count={tapping === null ? counting : null}
                taps={tapping === null && at.scaleTyped.way === 'tapped' ? (at.scaleTyped.taps ?? []) : taps}
                onTap={tapping === null ? null : tap}
              />
              <p className="why">
                {picture.widthPx} × {picture.heightPx} px
                {picture.reducedBy > 1.001 ? ', reduced from a larger photograph' : ''}. Pink strokes stand on
                columns, blue ones on rows, in three strips each; every tenth is longer.
              </p>
              {card === null ? null : <CardNotice card={card} asked={props.known.tag} onBar={at.takeBar} />}
            </Section>
            {doing === null ? <OpenReadings at={at} /> : null}
            <EyeCount
              isTapping={tapping === 'count'}
              tapped={taps.length}
              axis={first && second ? axisOfTaps(first, second, at.reading) : null}
              isBusy={doing !== null}
              hasScale={at.scale !== null}
              onStart={() => start('count')}
              onStop={stop}
              onRefine={(repeats) => {
                if (first && second) at.refine(first, second, repeats);
                stop();
              }}
              onOwn={(repeats, axis) => {
                if (first && second) at.keepOwn(first, second, repeats, axis);
                stop();
              }}
              onForget={at.forget}
            />
          </div>
          <div>
            {at.reading === null ? (
              <ScaleSection
                typed={at.scaleTyped}
                onType={at.typeScale}
                isRead={at.scale !== null}
                onTap={() => start('scale')}
              />
            ) : null}
            <PlaceFound at={at} />
            <KeepPlace {...props} at={at} />
          </div>
        </div>
      )}
    </>
  );
}

function Failed({ failed }: { readonly failed: 'not-opened' | 'not-counted' }) {
  const opening = failed === 'not-opened';
  return (
    <Notice
      tone="stop"
      title={
        opening ? 'This browser cannot open the file as a picture.' : 'The count stopped before its end.'
      }
    >
      <p>Nothing was counted, and nothing is guessed.</p>
      <p>
        <b>
          {opening
            ? 'Choose a JPEG, PNG or WebP photograph.'
            : 'Choose the photograph again, or a smaller part of it.'}
        </b>
      </p>
    </Notice>
  );
}

/** Names the place and keeps its count for the result. */
function KeepPlace(props: PlaceCounterProps & { readonly at: PlaceCount }) {
  const { at, place } = props;
  const { weftwise, warpwise } = at.found;
  const missing = notYet(at.scale, at.found, sureEnough);
  const keep = () => {
    if (at.scale === null || at.picture === null || weftwise === null || warpwise === null) return;
    const barMm = at.reading === null ? undefined : props.known.bars?.[at.reading.serial];
    const scale = placeScale(at.scale, at.picture.reducedBy, at.reading, barMm, at.scaleTyped);
    props.onKeep({ place: place.trim(), scale, weftwise, warpwise, nodesSeen: at.nodesSeen });
  };
  return (
    <Section title="Keep this place">
      <div className="weaveGap">
        <LineField label="Where on the rug" value={place} onChange={props.onPlace} mostCharacters={60} />
        {missing === null ? null : <p className="why">{missing}</p>}
        <div className="weaveTools">
          <Button
            isDisabled={missing !== null || place.trim() === '' || at.doing !== null || props.isKeeping}
            onPress={keep}
          >
            {props.isKeeping ? 'Keeping…' : 'Use this place'}
          </Button>
          <Button tone="ghost" onPress={props.onLeave}>
            Leave this photograph out
          </Button>
        </div>
      </div>
    </Section>
  );
}
