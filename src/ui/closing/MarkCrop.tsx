import { useRef } from 'react';
import type { PicturePoint } from '../../core/condition/index.ts';
import { type Mark, pointsOn, type Surface } from '../condition/index.ts';
import { Ground, MarkShapes } from '../condition/MarkShapes.tsx';
import { useUnit } from '../condition/useUnit.ts';

interface CropProps {
  readonly mark: Mark;
  readonly marks: readonly Mark[];
  readonly caption: string;
  readonly alt: string;
}

/** The part of a picture around one mark, large enough to compare; nothing where no picture shows it. */
export function MarkCrop({ surfaces, ...props }: CropProps & { readonly surfaces: readonly Surface[] }) {
  for (const surface of surfaces) {
    const points = pointsOn(props.mark, surface);
    if (points !== null && points.length > 0) return <Crop {...props} surface={surface} points={points} />;
  }
  return null;
}

function Crop(props: CropProps & { readonly surface: Surface; readonly points: readonly PicturePoint[] }) {
  const drawing = useRef<SVGSVGElement>(null);
  const { surface, points } = props;
  const { widthPx, heightPx } = surface;
  const xs = points.map(({ x }) => x * widthPx);
  const ys = points.map(({ y }) => y * heightPx);
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const reach = Math.max(right - left, bottom - top);
  const side = Math.min(Math.max(reach * 1.8, widthPx * 0.22), widthPx, heightPx);
  const unit = useUnit(drawing, { width: side, height: side });
  const from = (centre: number, most: number) => Math.min(Math.max(centre - side / 2, 0), most - side);
  return (
    <figure className="crop">
      <svg
        ref={drawing}
        className="markCrop"
        viewBox={`${from((left + right) / 2, widthPx)} ${from((top + bottom) / 2, heightPx)} ${side} ${side}`}
        role="img"
        aria-label={props.alt}
      >
        <Ground surface={surface} />
        <MarkShapes marks={props.marks} surface={surface} unit={unit} chosen={props.mark.mark} />
      </svg>
      <figcaption>{props.caption}</figcaption>
    </figure>
  );
}
