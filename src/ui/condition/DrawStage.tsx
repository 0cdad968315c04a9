import { type PointerEvent, type ReactNode, useRef, useState } from 'react';
import { fewerPoints, type PicturePoint } from '../../core/condition/index.ts';
import { Ground } from './MarkShapes.tsx';
import type { Surface } from './surface.ts';
import { useUnit } from './useUnit.ts';
import { heldOn, pinched, type View } from './view.ts';

interface DrawStageProps {
  readonly surface: Surface;
  readonly view: View;
  readonly onView: (view: View) => void;
  /** `look` moves the picture; `tap` gives single places; `stroke` also gives what is drawn without lifting. */
  readonly way: 'look' | 'tap' | 'stroke';
  readonly onPoints: (points: readonly PicturePoint[]) => void;
  readonly label: string;
  /** What stands on the picture; told how many surface px one screen px is. */
  readonly children: (unit: number) => ReactNode;
}

interface Touch {
  readonly clientX: number;
  readonly clientY: number;
}

const share = (value: number) => Math.min(1, Math.max(0, value));
const apart = (a: Touch, b: Touch) => Math.hypot(a.clientX - b.clientX, a.clientY - b.clientY);
/** A finger that moves less than this [px] meant to tap. */
const stillPx = 8;

/** The picture under the finger, pen or mouse: draws, moves, and grows between two fingers. */
export function DrawStage(props: DrawStageProps) {
  const { surface, view, way } = props;
  const drawing = useRef<SVGSVGElement>(null);
  const touches = useRef(new Map<number, Touch>());
  const start = useRef<Touch | null>(null);
  const wasPinched = useRef(false);
  const [stroke, setStroke] = useState<readonly PicturePoint[]>([]);
  const height = (view.width * surface.heightPx) / surface.widthPx;
  const unit = useUnit(drawing, { width: view.width, height });

  const onSurface = ({ clientX, clientY }: Touch) => {
    const matrix = drawing.current?.getScreenCTM();
    return new DOMPoint(clientX, clientY).matrixTransform(matrix?.inverse());
  };
  const placeOf = (touch: Touch): PicturePoint => {
    const { x, y } = onSurface(touch);
    return { x: share(x / surface.widthPx), y: share(y / surface.heightPx) };
  };

  const down = (event: PointerEvent<SVGSVGElement>) => {
    if (event.button !== 0) return;
    drawing.current?.setPointerCapture(event.pointerId);
    touches.current.set(event.pointerId, event);
    if (touches.current.size > 1) {
      wasPinched.current = true;
      setStroke([]);
      return;
    }
    wasPinched.current = false;
    start.current = event;
    if (way !== 'look') setStroke([placeOf(event)]);
  };

  const pinch = (event: PointerEvent<SVGSVGElement>, before: Touch) => {
    const other = [...touches.current].find(([id]) => id !== event.pointerId)?.[1];
    if (other === undefined) return;
    const about = onSurface({
      clientX: (event.clientX + other.clientX) / 2,
      clientY: (event.clientY + other.clientY) / 2,
    });
    props.onView(pinched(view, { before, now: event, other }, about, unit, surface));
  };

  const move = (event: PointerEvent<SVGSVGElement>) => {
    const before = touches.current.get(event.pointerId);
    if (before === undefined) return;
    if (touches.current.size > 1) pinch(event, before);
    else if (way === 'look' && !wasPinched.current)
      props.onView(
        heldOn(
          {
            ...view,
            x: view.x - (event.clientX - before.clientX) * unit,
            y: view.y - (event.clientY - before.clientY) * unit,
          },
          surface,
        ),
      );
    else if (way === 'stroke' && !wasPinched.current) {
      const place = placeOf(event);
      setStroke((drawn) => [...drawn, place]);
    }
    touches.current.set(event.pointerId, event);
  };

  const up = (event: PointerEvent<SVGSVGElement>) => {
    if (!touches.current.delete(event.pointerId)) return;
    const first = start.current;
    const drawn = stroke;
    if (touches.current.size > 0 || first === null) return;
    start.current = null;
    setStroke([]);
    if (wasPinched.current || way === 'look' || event.type === 'pointercancel') return;
    const isTap = drawn.length < 3 || (way === 'tap' && apart(first, event) < 3 * stillPx);
    if (isTap || apart(first, event) + drawn.length < stillPx) props.onPoints([placeOf(event)]);
    else if (way === 'stroke') props.onPoints(fewerPoints(drawn, (0.6 * unit) / surface.widthPx));
  };

  return (
    <svg
      ref={drawing}
      className={`drawStage ${way}${view.width < surface.widthPx ? ' near' : ''}`}
      viewBox={`${view.x} ${view.y} ${view.width} ${height}`}
      role="img"
      aria-label={props.label}
      onPointerDown={down}
      onPointerMove={move}
      onPointerUp={up}
      onPointerCancel={up}
    >
      <Ground surface={surface} />
      {props.children(unit)}
      {stroke.length > 1 ? (
        <polyline
          className="trace fresh"
          fill="none"
          points={stroke.map(({ x, y }) => `${x * surface.widthPx},${y * surface.heightPx}`).join(' ')}
        />
      ) : null}
    </svg>
  );
}
