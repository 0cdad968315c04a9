import type { PlacedRug, RoomPlace } from '../../dossier/index.ts';
import { measureWords, type UnitSystem } from '../../units/index.ts';
import './room.css';

const width = 620;
const above = 42;
const below = 30;
/** A gap narrower than this on paper is told in the list alone. */
const leastForWords = 74;

/** A pole or mesh with what hangs or lies there, at its real size; dashed where nobody measured the place. */
export function PlaceDrawing(props: {
  readonly place: RoomPlace;
  readonly units: UnitSystem;
  /** Length that fills the drawing, so that several are drawn alike [mm]. */
  readonly longestMm: number;
  /** The rug that is about to be put there. */
  readonly candidate?: string | undefined;
}) {
  const { place, units, longestMm, candidate } = props;
  const { kind, name, rugs, gaps, lengthMm, widthMm } = place;
  const scale = width / longestMm;
  const isMesh = kind === 'mesh';
  const deepest = isMesh ? (widthMm ?? 0) : Math.max(500, ...rugs.map((one) => one.acrossMm));
  const [height, long] = [above + deepest * scale + below, lengthMm * scale];
  const words = `${name}, from left to right: ${rugs.map(({ rug }) => `tag ${rug.tag}`).join(', ') || 'empty'}`;
  const nameOf = ({ rug, isMeasured }: PlacedRug) =>
    ['hungRug', isMeasured ? '' : 'guessed', rug.rug === candidate ? 'candidate' : ''].join(' ').trim();
  return (
    <svg className="placePlot" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={words}>
      {isMesh ? (
        <rect x={1} y={above} width={long - 2} height={deepest * scale} className="meshFrame" />
      ) : (
        <rect x={0} y={above - 6} width={long} height={6} className="poleBar" />
      )}
      {rugs.map((one) => (
        <g key={one.rug.rug}>
          <rect
            x={one.fromMm * scale}
            y={above + (isMesh ? 4 : 0)}
            width={one.alongMm * scale}
            height={one.acrossMm * scale}
            className={nameOf(one)}
          />
          <text
            x={Math.min(width - 14, Math.max(14, (one.fromMm + one.alongMm / 2) * scale))}
            y={above - 12}
            textAnchor="middle"
          >
            {one.rug.tag}
          </text>
        </g>
      ))}
      {gaps.map(({ fromMm, gapMm, isMeasured, between }) =>
        isMeasured && gapMm * scale > leastForWords ? (
          <text
            key={between.join(' ')}
            x={(fromMm + gapMm / 2) * scale}
            y={above + 26}
            textAnchor="middle"
            className="gapWords"
          >
            {measureWords('gap', gapMm, units)}
          </text>
        ) : null,
      )}
      <text x={2} y={height - 8} className="endWords">
        left
      </text>
      <text x={Math.max(90, long - 2)} y={height - 8} textAnchor="end" className="endWords">
        right
      </text>
    </svg>
  );
}
