import type { PicturePoint } from '../../core/condition/index.ts';
import { pictureAddress } from '../kit/index.ts';
import { type Mark, pointsOn, type Surface } from './surface.ts';

/** What lies under the marks: the photograph, or the rug's outline with its fringe. */
export function Ground({ surface }: { readonly surface: Surface }) {
  const { photo, widthPx, heightPx, body } = surface;
  if (photo !== null)
    return (
      <image
        href={pictureAddress(photo, 'shown')}
        width={widthPx}
        height={heightPx}
        preserveAspectRatio="none"
      />
    );
  if (body === null) return null;
  return (
    <g className="outline">
      {surface.isRound ? (
        <ellipse
          cx={body.x + body.width / 2}
          cy={body.y + body.height / 2}
          rx={body.width / 2}
          ry={body.height / 2}
        />
      ) : (
        <rect x={body.x} y={body.y} width={body.width} height={body.height} />
      )}
      <text
        x={widthPx / 2}
        y={heightPx - Math.min(widthPx, heightPx) * 0.014}
        fontSize={Math.min(widthPx, heightPx) * 0.045}
        textAnchor="middle"
      >
        start end
      </text>
    </g>
  );
}

interface ShapeProps {
  readonly shape: Mark['shape'];
  /** 0 … 1 of the surface. */
  readonly points: readonly PicturePoint[];
  readonly surface: Surface;
  /** How many surface px one screen px is. */
  readonly unit: number;
}

const path = (points: readonly PicturePoint[], { widthPx, heightPx }: Surface): string =>
  points.map(({ x, y }) => `${x * widthPx},${y * heightPx}`).join(' ');

/** One mark: a pale halo under a dark dashed line, so that it shows on any colour. */
export function DrawnMark({ shape, points, surface, unit }: ShapeProps) {
  const lines = { points: path(points, surface), fill: 'none' };
  if (shape === 'point' || points.length < 2)
    return points.map(({ x, y }) => {
      const ring = { cx: x * surface.widthPx, cy: y * surface.heightPx, r: 12 * unit, fill: 'none' };
      return (
        <g key={`${x} ${y}`}>
          <circle {...ring} className="halo" />
          <circle {...ring} className="trace" />
        </g>
      );
    });
  return shape === 'line' ? (
    <>
      <polyline {...lines} className="halo" />
      <polyline {...lines} className="trace" />
    </>
  ) : (
    <>
      <polygon {...lines} className="halo" />
      <polygon {...lines} className="trace" />
    </>
  );
}

/** Where the number of a mark stands: beside its uppermost point. */
const badgeAt = (points: readonly PicturePoint[]): PicturePoint =>
  points.reduce((top, point) => (point.y < top.y ? point : top), points[0] ?? { x: 0, y: 0 });

function Badge(props: {
  readonly x: number;
  readonly y: number;
  readonly number: number;
  readonly unit: number;
}) {
  const { x, y, number, unit } = props;
  return (
    <g className="badge">
      <circle cx={x} cy={y} r={12 * unit} />
      <text x={x} y={y + 5 * unit} fontSize={15 * unit} textAnchor="middle">
        {number}
      </text>
    </g>
  );
}

/** All marks that show on a surface, numbered as in the list beside it. */
export function MarkShapes(props: {
  readonly marks: readonly Mark[];
  readonly surface: Surface;
  readonly unit: number;
  readonly chosen?: string | null;
}) {
  const { surface, unit } = props;
  const shown = props.marks.flatMap((mark, index) => {
    const points = pointsOn(mark, surface);
    return points === null ? [] : [{ mark, points, number: index + 1 }];
  });
  return shown.map(({ mark, points, number }) => {
    const top = badgeAt(points);
    const beside = (mark.shape === 'point' ? 20 : 15) * unit;
    return (
      <g key={mark.mark} className={mark.mark === props.chosen ? 'markShape chosen' : 'markShape'}>
        <DrawnMark shape={mark.shape} points={points} surface={surface} unit={unit} />
        <Badge
          x={top.x * surface.widthPx + beside}
          y={top.y * surface.heightPx - beside}
          number={number}
          unit={unit}
        />
      </g>
    );
  });
}
