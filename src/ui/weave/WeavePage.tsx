import { useId, useState } from 'react';
import { Link } from 'wouter';
import { decideNodes, type Taps, weaveAnswer } from '../../core/weave/index.ts';
import { type View, wholeView } from '../condition/view.ts';
import { Busy, Button, Check, Notice, NumberField, ProblemNotice, Section } from '../kit/index.ts';
import { CardNotice } from './CardNotice.tsx';
import { useWeaveWorker } from './useWeaveWorker.ts';
import { NodesSection, type SaidNodes, ScaleSection } from './WeaveGiven.tsx';
import { type Axis, DensitySection, RepeatTable, trustWords } from './WeaveResult.tsx';
import { WeaveStage } from './WeaveStage.tsx';
import './weave.css';
import { noScale, scaleOf, type TypedScale, type WeaveTap } from './weaveScale.ts';

type Tapping = 'scale' | 'count' | null;
interface Pitches {
  readonly weftwisePx: number;
  readonly warpwisePx: number;
}

const axisOf = ({ from, to }: Taps): Axis =>
  Math.abs(to[0] - from[0]) >= Math.abs(to[1] - from[1]) ? 'weftwise' : 'warpwise';
const unconfirmed: Readonly<Record<Axis, boolean>> = { weftwise: false, warpwise: false };

/** Counts the knots on a photograph of the back, in this page alone; a person confirms or taps. */
export function WeavePage() {
  const id = useId();
  const { doing, failed, picture, counted, open, count } = useWeaveWorker();
  const [view, setView] = useState<View | null>(null);
  const [tapping, setTapping] = useState<Tapping>(null);
  const [taps, setTaps] = useState<readonly WeaveTap[]>([]);
  const [repeats, setRepeats] = useState<number | null>(null);
  const [tapped, setTapped] = useState<readonly Taps[]>([]);
  const [chosen, setChosen] = useState<Pitches | null>(null);
  const [others, setOthers] = useState<readonly Pitches[]>([]);
  const [confirmed, setConfirmed] = useState(unconfirmed);
  const [scaleTyped, setScaleTyped] = useState<TypedScale>(noScale);
  const [nodes, setNodes] = useState<SaidNodes>('unknown');

  const begin = (file: File) => {
    setView(null);
    setTapping(null);
    setTaps([]);
    setTapped([]);
    setChosen(null);
    setOthers([]);
    setConfirmed(unconfirmed);
    setScaleTyped(noScale);
    setNodes('unknown');
    open(file);
  };
  const recount = (nextTaps: readonly Taps[], pair: Pitches | null) => {
    setTapped(nextTaps);
    setChosen(pair);
    setConfirmed(unconfirmed);
    count({ taps: nextTaps, ...(pair === null ? {} : { confirmed: pair }) });
  };
  const tap = (place: WeaveTap) => {
    const next = taps.length >= 2 ? [place] : [...taps, place];
    const [a, b] = next;
    if (tapping === 'scale' && a !== undefined && b !== undefined) {
      setScaleTyped((before) => ({ ...before, taps: [a, b] }));
      setTapping(null);
      setTaps([]);
    } else setTaps(next);
  };
  const countWithTaps = () => {
    const [a, b] = taps;
    if (a === undefined || b === undefined || repeats === null) return;
    const pair: Taps = { from: [a.x, a.y], to: [b.x, b.y], repeats };
    setTapping(null);
    setTaps([]);
    recount([...tapped.filter((other) => axisOf(other) !== axisOf(pair)), pair], chosen);
  };

  const counting = counted?.ok === true ? counted.value.count : null;
  const isConfirmed = confirmed.weftwise && confirmed.warpwise;
  const cardScale = counted?.ok === true ? counted.value.cardScale : null;
  const scale = cardScale ?? (picture === null ? null : scaleOf(scaleTyped, picture.reducedBy));
  const basis = isConfirmed ? 'confirmed' : tapped.length > 0 ? 'tapped' : 'automatic';
  const answer =
    counting === null
      ? null
      : weaveAnswer(
          { ...counting, basis },
          scale,
          decideNodes(nodes === 'unknown' ? null : nodes === '1' ? 1 : 2, counting.nodesHint),
        );
  const offered =
    others.length > 0
      ? others
      : (counting?.candidates ?? []).map(({ weftwise, warpwise }) => ({
          weftwisePx: weftwise,
          warpwisePx: warpwise,
        }));
  const shown = picture === null ? null : (view ?? wholeView(picture));

  return (
    <div className="page">
      <Link className="crumb" href="/bench">
        Bench
      </Link>
      <h1>Count a weave</h1>
      <p className="lead">
        From a photograph of the back: flat, sharp, taken straight from above, a row of knots level in the
        picture. Nothing here is recorded or sent.
      </p>
      <div className="photoTaker weaveTake">
        <label className={`btn ${picture === null ? 'act' : 'ghost'}`} htmlFor={id}>
          {picture === null ? 'Choose or take a photograph' : 'Another photograph'}
        </label>
        <input
          id={id}
          className="unseen"
          type="file"
          accept="image/*"
          onChange={({ target }) => {
            const file = target.files?.[0];
            if (file !== undefined) begin(file);
            target.value = '';
          }}
        />
      </div>
      {doing === null ? null : (
        <Busy words={doing === 'opening' ? 'Opening the photograph' : 'Counting columns and rows'} />
      )}
      {failed === null ? null : (
        <Notice
          tone="stop"
          title={
            failed === 'not-opened'
              ? 'This browser cannot open the file as a picture.'
              : 'The count stopped before its end.'
          }
        >
          <p>Nothing was counted, and nothing is guessed.</p>
          <p>
            <b>
              {failed === 'not-opened'
                ? 'Choose a JPEG, PNG or WebP photograph.'
                : 'Choose the photograph again, or a smaller part of it.'}
            </b>
          </p>
        </Notice>
      )}
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
                      ? `Tap the ${taps.length === 0 ? 'first' : 'second'} end, from the middle of one column or row to the middle of another.`
                      : 'Give the number of repeats between the two taps.'}
                </p>
              )}
              <WeaveStage
                picture={picture}
                view={shown}
                onView={setView}
                count={tapping === null ? counting : null}
                taps={tapping === null && scaleTyped.way === 'tapped' ? (scaleTyped.taps ?? []) : taps}
                onTap={tapping === null ? null : tap}
              />
              <CardNotice card={picture.card} />
              <p className="why">
                {picture.widthPx} × {picture.heightPx} px
                {picture.reducedBy > 1.001 ? ', reduced from a larger photograph' : ''}. Pink strokes stand on
                columns, blue ones on rows, in three strips each; every tenth is longer.
              </p>
            </Section>
            <Section title="Tap the two ends">
              <p>Count five to ten columns or rows by eye; your taps then decide the factor.</p>
              {tapping === 'count' ? (
                <>
                  <NumberField
                    label="Repeats between the taps"
                    unit=""
                    least={2}
                    most={500}
                    step={1}
                    value={repeats}
                    onChange={setRepeats}
                  />
                  <div className="weaveTools">
                    <Button isDisabled={taps.length < 2 || repeats === null} onPress={countWithTaps}>
                      Count with these
                    </Button>
                    <Button
                      tone="ghost"
                      onPress={() => {
                        setTapping(null);
                        setTaps([]);
                      }}
                    >
                      Leave it
                    </Button>
                  </div>
                </>
              ) : (
                <div className="weaveTools">
                  <Button
                    tone="ghost"
                    isDisabled={doing !== null}
                    onPress={() => {
                      setTaps([]);
                      setTapping('count');
                    }}
                  >
                    Tap two ends
                  </Button>
                  {tapped.length === 0 ? null : (
                    <Button tone="ghost" isDisabled={doing !== null} onPress={() => recount([], null)}>
                      Forget the taps
                    </Button>
                  )}
                </div>
              )}
            </Section>
          </div>
          <div>
            {counting === null || answer === null ? null : (
              <>
                <Section title="What repeats">
                  <RepeatTable
                    count={counting}
                    trust={(axis) =>
                      trustWords(counting[axis], {
                        isConfirmed: confirmed[axis],
                        isTapped: tapped.some((pair) => axisOf(pair) === axis),
                        isChosen: chosen !== null,
                      })
                    }
                  />
                  <div className="weaveChecks">
                    {(['weftwise', 'warpwise'] as const).map((axis) => (
                      <Check
                        key={axis}
                        label={
                          axis === 'weftwise'
                            ? 'Every column has one pink stroke'
                            : 'Every row has one blue stroke'
                        }
                        hint="Enlarge the picture and look before you confirm."
                        isSelected={confirmed[axis]}
                        onChange={(isSelected) => setConfirmed({ ...confirmed, [axis]: isSelected })}
                      />
                    ))}
                  </div>
                  {offered.length < 2 || tapped.length > 0 ? null : (
                    <>
                      <p>Other readings of the same picture:</p>
                      <div className="weaveTools">
                        {offered.map((pair, at) => (
                          <Button
                            key={`${pair.weftwisePx} ${pair.warpwisePx}`}
                            tone="ghost"
                            isPressed={chosen === null ? at === 0 : chosen === pair}
                            onPress={() => {
                              setOthers(offered);
                              recount([], pair);
                            }}
                          >
                            {pair.weftwisePx.toFixed(1)} × {pair.warpwisePx.toFixed(1)} px
                          </Button>
                        ))}
                      </div>
                    </>
                  )}
                </Section>
                <DensitySection answer={answer} isConfirmed={isConfirmed} />
              </>
            )}
            {picture.card.ok ? null : (
              <ScaleSection
                typed={scaleTyped}
                onType={(changed) => setScaleTyped((before) => ({ ...before, ...changed }))}
                isRead={scale !== null}
                onTap={() => {
                  setTaps([]);
                  setTapping('scale');
                }}
              />
            )}
            <NodesSection nodes={nodes} onNodes={setNodes} />
          </div>
        </div>
      )}
    </div>
  );
}
