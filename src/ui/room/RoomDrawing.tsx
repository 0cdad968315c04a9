import { Link } from 'wouter';
import { type PlacedRug, type RoomPlace, roomLayout } from '../../dossier/index.ts';
import { placeWarningWords } from '../../text/roomAlarmWords.ts';
import { measureWords, type UnitSystem } from '../../units/index.ts';
import { Section } from '../kit/index.ts';
import { useRoomView } from './roomView.ts';
import { wetKgNow } from './wetKgNow.ts';

const width = 620;
const label = 42;

/** What hangs and lies where, at its real size, with what it weighs now and what to warn of. */
export function RoomDrawing() {
  const { setUp, rugs, answer, now, zero, settings } = useRoomView();
  const { places, elsewhere } = roomLayout(setUp, rugs, (rug) => wetKgNow(rug, answer, zero, now));
  const longest = Math.max(1000, ...places.map(({ lengthMm }) => lengthMm));
  return (
    <Section title="What hangs where">
      {places.map((place) => (
        <div key={place.spot} className="roomPlace">
          <h3>{place.name}</h3>
          <PlaceDrawing place={place} scale={width / longest} />
          <p className="why">{placeWords(place, settings.units)}</p>
          {place.warnings.map((warning) => (
            <p key={warning.code} className="placeWarning">
              <span aria-hidden="true">{warning.code === 'pole-strength-unknown' ? '◆' : '▲'} </span>
              {placeWarningWords(warning, settings.units)}
            </p>
          ))}
          <ul className="plain-list placed">
            {place.rugs.map((placed) => (
              <li key={placed.rug.rug}>
                <Link href={`/rugs/${placed.rug.rug}?at=dry`}>
                  <b>{placed.rug.tag}</b> {placed.rug.title}
                </Link>
                <span className="why">{placedWords(placed, settings.units)}</span>
              </li>
            ))}
          </ul>
        </div>
      ))}
      {elsewhere.length === 0 ? null : (
        <div className="roomPlace">
          <h3>Place not named</h3>
          <ul className="plain-list placed">
            {elsewhere.map(({ rug, tag, title, place }) => (
              <li key={rug}>
                <Link href={`/rugs/${rug}?at=dry`}>
                  <b>{tag}</b> {title}
                </Link>
                <span className="why">
                  {place ?? 'nowhere noted'}: choose its pole or mesh with “Another place”
                </span>
              </li>
            ))}
          </ul>
        </div>
      )}
    </Section>
  );
}

function placeWords({ kind, lengthMm, widthMm, rugs, loadKg }: RoomPlace, units: UnitSystem): string {
  const span = (mm: number) => measureWords('span', mm, units);
  const size = kind === 'pole' ? span(lengthMm) : `${span(lengthMm)} × ${span(widthMm ?? 0)}`;
  if (rugs.length === 0) return `${size}, empty`;
  const used = rugs.reduce((sum, { alongMm }) => sum + alongMm, 0);
  return `${size}, ${span(used)} taken, ${measureWords('mass', loadKg, units)} wet`;
}

function placedWords({ wetKg, warpKgPerM, acrossMm }: PlacedRug, units: UnitSystem): string {
  const mass = `${measureWords('mass', wetKg, units)} now`;
  return warpKgPerM === null
    ? mass
    : `${mass}, drops ${measureWords('span', acrossMm, units)}, its warps carry ${measureWords('widthLoad', warpKgPerM, units)}`;
}

function PlaceDrawing({ place, scale }: { readonly place: RoomPlace; readonly scale: number }) {
  const deepest =
    place.kind === 'mesh' ? (place.widthMm ?? 0) : Math.max(500, ...place.rugs.map((one) => one.acrossMm));
  const height = label + deepest * scale + 8;
  const long = place.lengthMm * scale;
  const words = `${place.name}: ${place.rugs.map(({ rug }) => `tag ${rug.tag}`).join(', ') || 'empty'}`;
  return (
    <svg className="placePlot" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={words}>
      {place.kind === 'mesh' ? (
        <rect x={1} y={label} width={long - 2} height={deepest * scale} className="meshFrame" />
      ) : (
        <rect x={0} y={label - 6} width={long} height={6} className="poleBar" />
      )}
      {place.rugs.map(({ rug, fromMm, alongMm, acrossMm }) => (
        <g key={rug.rug}>
          <rect
            x={fromMm * scale}
            y={label + (place.kind === 'mesh' ? 4 : 0)}
            width={alongMm * scale}
            height={acrossMm * scale}
            className="hungRug"
          />
          <text x={(fromMm + alongMm / 2) * scale} y={label - 10} textAnchor="middle">
            {rug.tag}
          </text>
        </g>
      ))}
    </svg>
  );
}
