import { useState } from 'react';
import {
  cornersAround,
  cornersAsSeen,
  type MarkShape,
  type PicturePoint,
  type RugCorners,
  type RugFrame,
} from '../../core/condition/index.ts';
import { Button, Empty, Notice, newId, ProblemNotice, useKept } from '../kit/index.ts';
import { CornerTaps, cornerNames, reachNames } from './CornerTaps.tsx';
import { DrawStage } from './DrawStage.tsx';
import { MarkList } from './MarkList.tsx';
import { DrawnMark, MarkShapes } from './MarkShapes.tsx';
import { MarkSheet, type NamedColour } from './MarkSheet.tsx';
import { blankDraft, draftOf, drawnOn, type MarkDraft, markFact } from './markDraft.ts';
import { PadTools, type Tool } from './PadTools.tsx';
import { SurfacePicker } from './SurfacePicker.tsx';
import { type Mark, type PadPicture, surfacesOf } from './surface.ts';
import { type View, wholeView } from './view.ts';
import './condition.css';

interface MarkPadProps {
  /** From the rug's measured sizes; null while they are not known. */
  readonly frame: RugFrame | null;
  readonly pictures: readonly PadPicture[];
  /** In the order that numbers them. */
  readonly marks: readonly Mark[];
  /** A mark was put down or changed. */
  readonly onMark: (mark: Mark) => void;
  /** Absent where a mark once put down stays, as in a dossier. */
  readonly onRemove?: (mark: string) => void;
  readonly onCorners: (photo: string, corners: RugCorners) => void;
  /** Keeps the mark in hand through a reload; one name per rug. */
  readonly keptAs: string;
  readonly foundDuringWork?: boolean;
  /** Named colours, so that a stain can say which of them lie under it. */
  readonly colours?: readonly NamedColour[];
}

interface InHand {
  readonly draft: MarkDraft;
  readonly byNumbers: boolean;
}

const noColours: readonly NamedColour[] = [];
const nothingInHand: InHand | null = null;
const least = { point: 1, line: 2, polygon: 3 } as const;

const hints: { readonly [T in Tool]: string } = {
  look: 'Choose a shape, then draw on the picture. Two fingers move and enlarge it.',
  corners: '',
  point: 'Tap the place.',
  line: 'Draw along it, or tap its ends and bends.',
  polygon:
    'Draw around it, or tap its corners one after the other. Enlarge a small mark to know its size better.',
};

/** Puts marks on a rug: drawn on its pictures or outline by finger, pen or mouse, or placed by numbers. */
export function MarkPad(props: MarkPadProps) {
  const { frame, marks } = props;
  const [inHand, setInHand, dropInHand] = useKept<InHand | null>(`${props.keptAs}/mark`, nothingInHand);
  const [isNaming, setNaming] = useState(false);
  const [tool, setTool] = useState<Tool>('look');
  const [points, setPoints] = useState<readonly PicturePoint[]>([]);
  const [taps, setTaps] = useState<readonly PicturePoint[]>([]);
  const [chosen, setChosen] = useState<string | null>(null);
  const [surfaceKey, setSurfaceKey] = useState<string | null>(null);
  const [view, setView] = useState<View | null>(null);

  const surfaces = surfacesOf(props.pictures, frame);
  const surface = surfaces.find(({ key }) => key === surfaceKey) ?? surfaces[0];
  const shown = surface === undefined ? null : (view ?? wholeView(surface));

  const startOver = () => {
    setTool('look');
    setPoints([]);
    setTaps([]);
  };
  const hold = (draft: MarkDraft, byNumbers: boolean) => {
    setInHand({ draft, byNumbers });
    setNaming(true);
  };
  const takeTool = (next: Tool) => {
    setPoints([]);
    setTaps([]);
    setTool(next === tool ? 'look' : next);
  };
  const name = (shape: MarkShape, drawn: readonly PicturePoint[]) => {
    if (surface === undefined || shown === null) return;
    const seenShare = shown.width / surface.widthPx;
    hold(drawnOn(blankDraft(newId(), shape, surface.side), surface, drawn, seenShare), false);
  };
  const addPoints = (more: readonly PicturePoint[]) => {
    if (surface === undefined) return;
    if (tool === 'corners') {
      const next = [...taps, ...more].slice(0, 4);
      const [a, b, c, d] = next;
      setTaps(next);
      if (surface.photo !== null && a && b && c && d) {
        const seen: RugCorners = surface.isRound ? cornersAround([a, b, c, d]) : [a, b, c, d];
        props.onCorners(surface.photo, cornersAsSeen(seen, surface.side));
        startOver();
      }
      return;
    }
    if (tool === 'point') {
      setPoints(more);
      name('point', more);
      return;
    }
    setPoints((before) => [...before, ...more]);
  };
  const keep = () => {
    const fact = inHand === null ? null : markFact(inHand.draft, frame, props.foundDuringWork ?? false);
    if (fact === null) return;
    props.onMark(fact);
    setNaming(false);
    dropInHand();
    startOver();
    setChosen(fact.mark);
  };
  const throwAway = () => {
    const mark = inHand?.draft.mark;
    if (mark !== undefined && marks.some((other) => other.mark === mark)) props.onRemove?.(mark);
    setNaming(false);
    dropInHand();
    startOver();
  };

  const isDrawing = tool === 'line' || tool === 'polygon';
  const isReady = isDrawing && points.length >= least[tool];
  const isRecorded = inHand !== null && marks.some(({ mark }) => mark === inHand.draft.mark);
  const hint =
    tool === 'corners'
      ? `Tap the ${(surface?.isRound === true ? reachNames : cornerNames)[taps.length] ?? 'corner'} of the woven body, without the fringe, with the start end nearest you.`
      : hints[tool];

  return (
    <div className="markPad">
      <div className="padStage">
        {surface === undefined || shown === null ? (
          <Empty>
            <p>
              There is no picture to draw on, and the size is not known. Take a picture, measure the rug, or
              place marks by numbers.
            </p>
          </Empty>
        ) : (
          <>
            <SurfacePicker
              surfaces={surfaces}
              chosen={surface.key}
              onChoose={(key) => {
                setSurfaceKey(key);
                setView(null);
                startOver();
              }}
            />
            <PadTools
              tool={tool}
              onTool={takeTool}
              canTapCorners={surface.photo !== null && frame !== null}
              hasCorners={surface.corners !== null}
              canUndo={points.length > 0 || taps.length > 0}
              onUndo={() => {
                if (tool === 'corners') setTaps((before) => before.slice(0, -1));
                else setPoints((before) => before.slice(0, -1));
              }}
              surface={surface}
              view={shown}
              onView={setView}
            />
            <p className="hint" role="status">
              {hint}
            </p>
            <DrawStage
              surface={surface}
              view={shown}
              onView={setView}
              way={tool === 'look' ? 'look' : isDrawing ? 'stroke' : 'tap'}
              onPoints={addPoints}
              label={`${surface.words} with ${marks.length === 1 ? '1 mark' : `${marks.length} marks`}. Marks can also be placed by numbers, below.`}
            >
              {(unit) => (
                <>
                  <MarkShapes marks={marks} surface={surface} unit={unit} chosen={chosen} />
                  <CornerTaps
                    taps={tool === 'corners' ? taps : []}
                    corners={tool === 'corners' ? null : surface.corners}
                    surface={surface}
                    unit={unit}
                  />
                  {points.length > 0 && tool !== 'look' && tool !== 'corners' ? (
                    <g className="markShape chosen">
                      <DrawnMark
                        shape={points.length < 2 ? 'point' : tool}
                        points={points}
                        surface={surface}
                        unit={unit}
                      />
                    </g>
                  ) : null}
                </>
              )}
            </DrawStage>
            {surface.problem === null ? null : <ProblemNotice problem={surface.problem} />}
            {surface.photo !== null && frame !== null && surface.corners === null && tool === 'look' ? (
              <Notice tone="plain">
                Tap the four corners once, and every mark drawn here gets its size in cm.
              </Notice>
            ) : null}
          </>
        )}
        <div className="actions">
          {isReady ? <Button onPress={() => name(tool, points)}>Name this mark</Button> : null}
          {inHand !== null && !isNaming ? (
            <Button onPress={() => setNaming(true)}>Go on with the mark in hand</Button>
          ) : null}
          <Button
            tone="ghost"
            onPress={() => hold(blankDraft(newId(), 'point', surface?.side ?? 'face'), true)}
          >
            Place a mark by numbers
          </Button>
        </div>
      </div>
      <MarkList
        marks={marks}
        frame={frame}
        chosen={chosen}
        onChoose={(mark) => setChosen(mark === chosen ? null : mark)}
        onOpen={(mark) => hold(draftOf(mark), mark.drawn === undefined)}
      />
      {inHand === null ? null : (
        <MarkSheet
          key={inHand.draft.mark}
          draft={inHand.draft}
          byNumbers={inHand.byNumbers}
          frame={frame}
          colours={props.colours ?? noColours}
          usedWords={marks.map(({ word }) => word)}
          isOpen={isNaming}
          onChange={(draft) => setInHand({ ...inHand, draft })}
          onSave={keep}
          onClose={() => setNaming(false)}
          onRemove={isRecorded && props.onRemove === undefined ? undefined : throwAway}
        />
      )}
    </div>
  );
}
