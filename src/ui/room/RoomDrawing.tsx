import { Link } from 'wouter';
import { type PlacedRug, type RoomPlace, roomLayout } from '../../dossier/index.ts';
import { placeWarningWords } from '../../text/roomAlarmWords.ts';
import { measureWords, type UnitSystem } from '../../units/index.ts';
import { Section } from '../kit/index.ts';
import { PlaceDrawing } from './PlaceDrawing.tsx';
import { useRoomView } from './roomView.ts';
import { wetKgNow } from './wetKgNow.ts';

/** What hangs and lies where, at its real size, with what it weighs now and what to warn of. */
export function RoomDrawing() {
  const { setUp, rugs, answer, now, zero, settings } = useRoomView();
  const { places, elsewhere } = roomLayout(setUp, rugs, (rug) => wetKgNow(rug, answer, zero, now));
  const longest = Math.max(1000, ...places.map(({ lengthMm }) => lengthMm));
  return (
    <Section title="What hangs where">
      <p className="why">
        A wet rug weighs two to three times its dry mass: lift it with the people its plan names, on a dry
        floor. Musty smell or growth: respirator and gloves, and keep that rug apart.
      </p>
      {places.map((place) => (
        <div key={place.spot} className="roomPlace">
          <h3>{place.name}</h3>
          <PlaceDrawing place={place} units={settings.units} longestMm={longest} />
          <p className="why">{placeWords(place, settings.units)}</p>
          {place.warnings.map((warning) => (
            <p key={JSON.stringify(warning)} className="placeWarning">
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
                <span className="why">{placedWords(placed, place, settings.units)}</span>
              </li>
            ))}
          </ul>
        </div>
      ))}
      {elsewhere.length === 0 ? null : (
        <div className="roomPlace">
          <h3>On the floor, or place not named</h3>
          <ul className="plain-list placed">
            {elsewhere.map(({ rug, tag, title, place }) => (
              <li key={rug}>
                <Link href={`/rugs/${rug}?at=dry`}>
                  <b>{tag}</b> {title}
                </Link>
                <span className="why">
                  {place ?? 'nowhere noted'}: “Another place” in its dossier names its pole or mesh
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
  return `${size}, ${span(used)} taken, ${measureWords('load', loadKg, units)} wet`;
}

function placedWords(placed: PlacedRug, place: RoomPlace, units: UnitSystem): string {
  const { wetKg, warpKgPerM, acrossMm, isTeamLift } = placed;
  const mass = `${measureWords('load', wetKg, units)} now${isTeamLift ? ': lift it with two or more' : ''}`;
  const load =
    warpKgPerM === null
      ? ''
      : `, drops ${measureWords('span', acrossMm, units)}, its warps carry ${measureWords('widthLoad', warpKgPerM, units)}`;
  return `${mass}${load}; ${whereWords(placed, place, units)}`;
}

function whereWords({ rug, isMeasured, fromMm }: PlacedRug, place: RoomPlace, units: UnitSystem): string {
  if (!isMeasured) return 'place along it not measured, drawn where it could be';
  const next = place.gaps.find(({ between: [left] }) => left === rug.tag);
  const from = `${measureWords('gap', fromMm, units)} from the left end`;
  if (next === undefined) return from;
  return `${from}, ${measureWords('gap', next.gapMm, units)} to ${next.between[1]}${next.isMeasured ? '' : ' as drawn'}`;
}
