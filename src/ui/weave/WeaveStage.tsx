import { type PointerEvent, useEffect, useRef } from 'react';
import { overlayStrokes, type WeaveCount } from '../../core/weave/index.ts';
import { useUnit } from '../condition/useUnit.ts';
import { heldOn, middleOf, pinched, type View, zoomed } from '../condition/view.ts';
import { Button } from '../kit/index.ts';
import type { WeaveTap } from './weaveScale.ts';

interface WeaveStageProps {
  readonly picture: { readonly url: string; readonly widthPx: number; readonly heightPx: number };
  readonly view: View;
  readonly onView: (view: View) => void;
  readonly count: WeaveCount | null;
  readonly taps: readonly WeaveTap[];
  /** Null while a tap means nothing. */
  readonly onTap: ((tap: WeaveTap) => void) | null;
}

interface Touch {
  readonly clientX: number;
  readonly clientY: number;
}

/** A finger that moves less than this [px] meant to tap. */
const stillPx = 8;

const strokesOf = (count: WeaveCount) =>
  (['weftwise', 'warpwise'] as const).flatMap((axis) =>
    [false, true].map((tenth) => ({
      name: `${axis}${tenth ? ' tenth' : ''}`,
      path: overlayStrokes(count)
        .filter((stroke) => stroke.axis === axis && stroke.tenth === tenth)
        .map(({ from, to }) => `M${from[0]} ${from[1]}L${to[0]} ${to[1]}`)
        .join(''),
    })),
  );

/** The picture with the counted columns and rows; enlarged, moved and tapped by fingers, mouse or buttons. */
export function WeaveStage({ picture, view, onView, count, taps, onTap }: WeaveStageProps) {
  const drawing = useRef<SVGSVGElement>(null);
  const touches = useRef(new Map<number, Touch>());
  /** Where a single finger came down, and the view it then moves; null once a second finger joined. */
  const held = useRef<{ readonly touch: Touch; readonly view: View } | null>(null);
  const height = (view.width * picture.heightPx) / picture.widthPx;
  const unit = useUnit(drawing, { width: view.width, height });
  const isTapped = onTap !== null;
  useEffect(() => {
    // The button that asks for a tap may stand far below the picture.
    if (isTapped) drawing.current?.scrollIntoView({ block: 'center' });
  }, [isTapped]);
  const middle = middleOf(view, picture);
  const step = (x: number, y: number) =>
    onView(heldOn({ ...view, x: view.x + x * view.width * 0.1, y: view.y + y * height * 0.1 }, picture));
  const zoom = (by: number) => onView(zoomed(view, by, middle, picture));
  const onPicture = ({ clientX, clientY }: Touch) =>
    new DOMPoint(clientX, clientY).matrixTransform(drawing.current?.getScreenCTM()?.inverse());

  const down = (event: PointerEvent<SVGSVGElement>) => {
    event.currentTarget.setPointerCapture(event.pointerId);
    touches.current.set(event.pointerId, event);
    held.current = touches.current.size === 1 ? { touch: event, view } : null;
  };
  const move = (event: PointerEvent<SVGSVGElement>) => {
    const before = touches.current.get(event.pointerId);
    if (before === undefined) return;
    touches.current.set(event.pointerId, event);
    const other = [...touches.current].find(([id]) => id !== event.pointerId)?.[1];
    if (other !== undefined) {
      const about = onPicture({
        clientX: (event.clientX + other.clientX) / 2,
        clientY: (event.clientY + other.clientY) / 2,
      });
      return onView(pinched(view, { before, now: event, other }, about, unit, picture));
    }
    const from = held.current;
    if (from === null || view.width >= picture.widthPx) return;
    const [x, y] = [event.clientX - from.touch.clientX, event.clientY - from.touch.clientY];
    if (Math.hypot(x, y) <= stillPx) return;
    onView(heldOn({ ...from.view, x: from.view.x - x * unit, y: from.view.y - y * unit }, picture));
  };
  const up = (event: PointerEvent<SVGSVGElement>) => {
    touches.current.delete(event.pointerId);
    const from = held.current;
    held.current = null;
    if (from === null || onTap === null || event.type === 'pointercancel') return;
    const [x, y] = [event.clientX - from.touch.clientX, event.clientY - from.touch.clientY];
    if (Math.hypot(x, y) > stillPx) return;
    const place = onPicture(event);
    onTap({ x: place.x, y: place.y, unit });
  };

  const cross = ({ x, y }: { readonly x: number; readonly y: number }, size: number) =>
    `M${x - size * unit} ${y}h${2 * size * unit}M${x} ${y - size * unit}v${2 * size * unit}`;
  const crosses = [...taps.map((tap) => cross(tap, 12)), ...(onTap === null ? [] : [cross(middle, 5)])].join(
    '',
  );
  return (
    <>
      <svg
        ref={drawing}
        className={`weaveStage${view.width < picture.widthPx ? ' near' : ''}`}
        viewBox={`${view.x} ${view.y} ${view.width} ${height}`}
        role="img"
        aria-label={
          count === null
            ? 'The photograph.'
            : 'The photograph with pink strokes on the counted columns and blue ones on the counted rows.'
        }
        onPointerDown={down}
        onPointerMove={move}
        onPointerUp={up}
        onPointerCancel={up}
      >
        <image href={picture.url} width={picture.widthPx} height={picture.heightPx} />
        {count === null
          ? null
          : strokesOf(count).map(({ name, path }) => <path key={name} className={name} d={path} />)}
        <path className="under" d={crosses} />
        <path className="over" d={crosses} />
      </svg>
      <div className="weaveTools" role="toolbar" aria-label="Picture">
        <Button tone="ghost" label="Larger" onPress={() => zoom(1.6)}>
          +
        </Button>
        <Button tone="ghost" label="Smaller" onPress={() => zoom(1 / 1.6)}>
          −
        </Button>
        <Button tone="ghost" label="Move left" onPress={() => step(-1, 0)}>
          ←
        </Button>
        <Button tone="ghost" label="Move right" onPress={() => step(1, 0)}>
          →
        </Button>
        <Button tone="ghost" label="Move up" onPress={() => step(0, -1)}>
          ↑
        </Button>
        <Button tone="ghost" label="Move down" onPress={() => step(0, 1)}>
          ↓
        </Button>
        {onTap === null ? null : (
          <Button tone="ghost" onPress={() => onTap({ ...middle, unit })}>
            Tap the middle
          </Button>
        )}
      </div>
    </>
  );
}
