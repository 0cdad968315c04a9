import { useRef } from 'react';
import { Ground, MarkShapes } from './MarkShapes.tsx';
import type { Mark, Surface } from './surface.ts';
import { useUnit } from './useUnit.ts';
import './condition.css';

/** A picture or outline with its marks, only to look at. */
export function MarkedPicture(props: {
  readonly surface: Surface;
  /** All marks of the rug, in the order that numbers them. */
  readonly marks: readonly Mark[];
  readonly chosen?: string | null;
  readonly alt: string;
}) {
  const { surface } = props;
  const drawing = useRef<SVGSVGElement>(null);
  const unit = useUnit(drawing, { width: surface.widthPx, height: surface.heightPx });
  return (
    <svg
      ref={drawing}
      className="markedPicture"
      viewBox={`0 0 ${surface.widthPx} ${surface.heightPx}`}
      role="img"
      aria-label={props.alt}
    >
      <Ground surface={surface} />
      <MarkShapes marks={props.marks} surface={surface} unit={unit} chosen={props.chosen ?? null} />
    </svg>
  );
}
