import { type PointerEvent, type ReactNode, useRef } from 'react';
import type { Outline } from '../../core/colour/index.ts';
import { useUnit } from '../condition/useUnit.ts';
import { Button, Choice } from '../kit/index.ts';
import type { ShownPicture } from './useColourWorker.ts';

/** A place on a picture: `mid` where it is, null while it was not shown yet. */
export interface StagePlace<Id extends string> {
  readonly id: Id;
  readonly name: string;
  readonly mid: readonly [x: number, y: number] | null;
  readonly outline: Outline;
  readonly look: 'control' | 'sample' | 'corner';
}

interface View {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const path = (outline: Outline): string => `M${outline.map(([x, y]) => `${x} ${y}`).join('L')}Z`;

/** Of a view's width, a press of a button moves a place so far. */
const nudgeShare = 0.02;

/** Reach of a grip [px of the screen]. */
const gripPx = 26;
/** A finger that moves less than this [px] meant to tap. */
const stillPx = 8;

/** A name stays on the picture: it grows away from the nearer edge. */
const anchorAt = (across: number) => (across < 0.3 ? 'start' : across > 0.7 ? 'end' : 'middle');

/**
 * A picture with places drawn on it. Once they may be moved: dragged by their grips, or the chosen one put
 * where a tap lands, or moved by buttons; a finger beside the grips scrolls the page.
 */
export function PlaceStage<Id extends string>(props: {
  readonly picture: ShownPicture;
  readonly view: View;
  /** What the picture shows, for a reader who cannot see it. */
  readonly described: string;
  readonly places: readonly StagePlace<Id>[];
  /** Null while nothing may be moved. */
  readonly moving: {
    readonly label: string;
    readonly chosen: Id;
    readonly onChosen: (id: Id) => void;
    readonly onMove: (id: Id, x: number, y: number) => void;
  } | null;
  /** Further buttons beside the arrows. */
  readonly tools?: ReactNode;
  /** Lines beneath the places, such as a frame. */
  readonly children?: ReactNode;
}) {
  const { picture, view, places, moving } = props;
  const drawing = useRef<SVGSVGElement>(null);
  const held = useRef<{ readonly id: Id | null; readonly x: number; readonly y: number } | null>(null);
  const unit = useUnit(drawing, view);
  const at = (event: PointerEvent<SVGSVGElement>) =>
    new DOMPoint(event.clientX, event.clientY).matrixTransform(drawing.current?.getScreenCTM()?.inverse());
  const nudge = (right: number, down: number) => {
    const mid = places.find(({ id }) => id === moving?.chosen)?.mid;
    const step = view.width * nudgeShare;
    const [x, y] = mid ?? [view.x + view.width / 2, view.y + view.height / 2];
    moving?.onMove(moving.chosen, x + right * step, y + down * step);
  };
  return (
    <div className="placeStage">
      <svg
        ref={drawing}
        viewBox={`${view.x} ${view.y} ${view.width} ${view.height}`}
        role="img"
        aria-label={props.described}
        className={moving === null ? '' : 'moving'}
        onPointerDown={(event) => {
          const grip = event.target instanceof SVGElement ? event.target.dataset['place'] : undefined;
          // A place that waits to be shown may lie right beside another: the touch is for it, not for that one.
          const isWaiting = places.find(({ id }) => id === moving?.chosen)?.mid === null;
          const id = isWaiting ? null : (places.find((place) => place.id === grip)?.id ?? null);
          held.current = { id, x: event.clientX, y: event.clientY };
          if (id === null) return;
          moving?.onChosen(id);
          event.currentTarget.setPointerCapture(event.pointerId);
        }}
        onPointerMove={(event) => {
          const { id = null } = held.current ?? {};
          if (id === null) return;
          const { x, y } = at(event);
          moving?.onMove(id, x, y);
        }}
        onPointerUp={(event) => {
          const from = held.current;
          held.current = null;
          if (moving === null || from === null || from.id !== null) return;
          if (Math.hypot(event.clientX - from.x, event.clientY - from.y) > stillPx) return;
          const { x, y } = at(event);
          moving.onMove(moving.chosen, x, y);
        }}
        onPointerCancel={() => {
          held.current = null;
        }}
      >
        <image href={picture.url} width={picture.widthPx} height={picture.heightPx} />
        {props.children}
        {places.map(({ id, name, mid, outline, look }) =>
          mid === null ? null : (
            <g key={`${id}${path(outline)}`} className={`stagePlace ${look}`}>
              <path className="under" d={path(outline)} />
              <path className="over" d={path(outline)} />
              <text
                x={mid[0]}
                y={Math.min(...outline.map(([, y]) => y)) - 5 * unit}
                fontSize={15 * unit}
                textAnchor={anchorAt((mid[0] - view.x) / view.width)}
              >
                {name}
              </text>
              {moving !== null && (
                <circle className="grip" data-place={id} cx={mid[0]} cy={mid[1]} r={gripPx * unit} />
              )}
            </g>
          ),
        )}
      </svg>
      {moving !== null && (
        <>
          <Choice
            label={moving.label}
            columns={2}
            options={places.map(({ id, name, mid }) => ({
              value: id,
              words: name,
              ...(mid === null ? { hint: 'not shown yet' } : {}),
            }))}
            value={moving.chosen}
            onChange={moving.onChosen}
          />
          <div className="stageTools" role="toolbar" aria-label="Move the chosen place">
            <Button tone="ghost" label="Left" onPress={() => nudge(-1, 0)}>
              ←
            </Button>
            <Button tone="ghost" label="Right" onPress={() => nudge(1, 0)}>
              →
            </Button>
            <Button tone="ghost" label="Up" onPress={() => nudge(0, -1)}>
              ↑
            </Button>
            <Button tone="ghost" label="Down" onPress={() => nudge(0, 1)}>
              ↓
            </Button>
            {props.tools}
          </div>
        </>
      )}
    </div>
  );
}
