import { useRef } from 'react';
import { type Mark, pointsOn, type Surface } from '../condition/index.ts';
import { Ground, MarkShapes } from '../condition/MarkShapes.tsx';
import { useUnit } from '../condition/useUnit.ts';

/** The part of a picture around one mark, large enough to compare. */
export function MarkCrop(props: {
  readonly mark: Mark;
  readonly marks: readonly Mark[];
  readonly surfaces: readonly Surface[];
  readonly alt: string;
}) {
  const drawing = useRef<SVGSVGElement>(null);
  const surface = props.surfaces.find((each) => pointsOn(props.mark, each) !== null);
  const points = surface === undefined ? null : pointsOn(props.mark, surface);
  const { widthPx, heightPx } = surface ?? { widthPx: 1, heightPx: 1 };
  const xs = (points ?? []).map(({ x }) => x * widthPx);
  const ys = (points ?? []).map(({ y }) => y * heightPx);
  const middle = { x: (Math.min(...xs) + Math.max(...xs)) / 2, y: (Math.min(...ys) + Math.max(...ys)) / 2 };
  const reach = Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
  const side = Math.min(Math.max(reach * 1.8, widthPx * 0.22), widthPx, heightPx);
  const unit = useUnit(drawing, { width: side, height: side });
  if (surface === undefined || points === null) return null;
  const from = (centre: number, most: number) => Math.min(Math.max(centre - side / 2, 0), most - side);
  return (
    <svg
      ref={drawing}
      className="markCrop"
      viewBox={`${from(middle.x, widthPx)} ${from(middle.y, heightPx)} ${side} ${side}`}
      role="img"
      aria-label={props.alt}
    >
      <Ground surface={surface} />
      <MarkShapes marks={props.marks} surface={surface} unit={unit} chosen={props.mark.mark} />
    </svg>
  );
}
