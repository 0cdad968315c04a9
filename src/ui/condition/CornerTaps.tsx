import type { PicturePoint, RugCorners } from '../../core/condition/index.ts';
import type { Surface } from './surface.ts';

/** In the order they are tapped, as the person who looks at the picture sees them. */
export const cornerNames = [
  'lower left corner',
  'lower right corner',
  'upper right corner',
  'upper left corner',
] as const;

/** Where a round rug reaches farthest, in the order they are tapped. */
export const reachNames = [
  'lowest place',
  'place farthest to the right',
  'highest place',
  'place farthest to the left',
] as const;

/** The corners tapped so far, or the frame they make once all four are known. */
export function CornerTaps(props: {
  readonly taps: readonly PicturePoint[];
  readonly corners: RugCorners | null;
  readonly surface: Surface;
  readonly unit: number;
}) {
  const { surface, unit } = props;
  const at = ({ x, y }: PicturePoint) => ({ x: x * surface.widthPx, y: y * surface.heightPx });
  return (
    <g className="corners">
      {props.corners === null ? null : (
        <polygon
          points={props.corners
            .map(at)
            .map(({ x, y }) => `${x},${y}`)
            .join(' ')}
        />
      )}
      {props.taps.map(at).map(({ x, y }) => (
        <g key={`${x} ${y}`}>
          <circle cx={x} cy={y} r={10 * unit} />
          <path d={`M${x - 14 * unit} ${y}h${28 * unit}M${x} ${y - 14 * unit}v${28 * unit}`} />
        </g>
      ))}
    </g>
  );
}
