import { Link } from 'wouter';
import { threeFigures } from '../../../core/weave/index.ts';
import { type Estimate, knotResult, type Noted, sizeOf } from '../../../dossier/index.ts';
import { Button, Picture, When } from '../../kit/index.ts';
import { RugCount } from '../../weave/RugCount.tsx';
import { useDossier } from '../dossierView.ts';
import { counted } from '../figures.ts';
import { Part } from '../Part.tsx';
import { repairPlaces } from './repairPlaces.ts';

const in7cm = ({ value, interval95 }: Estimate): string =>
  `${threeFigures(0.07 * value)}${interval95 === null ? '' : ` (${interval95.map((bound) => threeFigures(0.07 * bound)).join(' to ')})`}`;

/** Every place with its picture, both ways, how it was counted and what gave it its scale. */
function Places({ count }: { readonly count: Noted<'KnotsCounted'> }) {
  const { places } = knotResult(count);
  return (
    <ul className="claims">
      {places.map(({ place, weftwisePerM, warpwisePerM, basis }, at) => {
        const photographed = count.counted === 'photographed' ? count.places[at] : undefined;
        const scale = photographed?.scale;
        return (
          <li className="knotPlace" key={place}>
            <div>
              <div className="claim-name">{place}</div>
              <div className="claim-value">
                across {in7cm(weftwisePerM)}, along {in7cm(warpwisePerM)} in 7 cm
              </div>
              <div className="why">
                {basis.weftwise === basis.warpwise
                  ? basis.weftwise
                  : `across ${basis.weftwise}, along ${basis.warpwise}`}
                {scale === undefined
                  ? ''
                  : scale.from === 'card'
                    ? ` · card ${scale.serial}, ${scale.barMm === undefined ? 'never measured, ±3 %' : `bar ${scale.barMm} mm`}`
                    : ` · scale ${scale.from === 'given' ? 'given by hand' : 'from a length in the picture'}`}
              </div>
            </div>
            {photographed === undefined ? null : (
              <Picture photo={photographed.photo} form="thumbnail" alt={`The back at ${place}`} />
            )}
          </li>
        );
      })}
    </ul>
  );
}

/** Knots counted: the result of all places, each place, and every notation of the trade. */
export function KnotsPart() {
  const { standing, settings, visit, open, nameOf, ask } = useDossier();
  const latest = standing.knots.at(-1);
  return (
    <Part title="Knots" id="knots">
      {latest === undefined ? (
        <p className="why">
          Not counted. Count at five places at least: a hand-woven rug is not the same everywhere.
        </p>
      ) : (
        <>
          <RugCount
            count={latest}
            units={settings.units}
            areaM2={sizeOf(standing)?.areaM2 ?? null}
            marks={repairPlaces(standing)}
          />
          <details>
            <summary>{counted(latest.places.length, 'place')}</summary>
            <Places count={latest} />
          </details>
          <p className="why">
            Counted by {nameOf(latest.by)} <When at={latest.when} />
            {latest.counted === 'photographed' ? ` · ${latest.algorithm}` : ''}
          </p>
        </>
      )}
      {open && (
        <div className="actions">
          <Button tone="ghost" onPress={() => ask({ kind: 'knots on photographs' })}>
            Count knots on photographs
          </Button>
          <Button tone="ghost" onPress={() => ask({ kind: 'knots' })}>
            Count knots by hand
          </Button>
          <Link className="btn ghost" href={`/bench/card?tag=${visit?.received.tag ?? ''}`}>
            This rug’s weave card
          </Link>
        </div>
      )}
    </Part>
  );
}
