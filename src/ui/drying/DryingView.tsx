import { useEffect } from 'react';
import { Link } from 'wouter';
import { dryCriteria, dryingPlaceOf, hoursBetween, wetClock } from '../../dossier/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { Notice, Tag } from '../kit/index.ts';
import '../wash/wash.css';
import { DryCheck } from './DryCheck.tsx';
import { ForecastPart } from './ForecastPart.tsx';
import { MassPlot } from './MassPlot.tsx';
import { PosturePart } from './PosturePart.tsx';
import { ReadingPart } from './ReadingPart.tsx';
import { WetClock } from './WetClock.tsx';

/** Drying, from the floor to the dry standard: clock, posture, readings, and what is not yet met. */
export function DryingView() {
  const { rug, standing, visit, settings, now } = useDossier();
  useEffect(() => {
    scrollTo(0, 0);
  }, []);
  if (visit === null) return null;
  const clock = wetClock(visit, now);
  const turned = visit.turnings.at(-1)?.when ?? visit.dryingStarted?.when;
  const forecastHere = (dryingPlaceOf(standing)?.room ?? null) !== null;
  // One that meets the dry standard waits to be accepted: lifting it again serves nothing.
  const isProved =
    visit.dryAccepted !== null || dryCriteria(standing, visit, settings.dryStandard).every(({ met }) => met);
  const turnDue = turned !== undefined && !isProved && hoursBetween(turned, now) >= 6;
  return (
    <div className="page wash">
      <header className="wash-head">
        <Link className="btn ghost" href={`/rugs/${rug}`}>
          ‹ Dossier
        </Link>
        <Tag tag={visit.received.tag} />
        <h1>{standing.opened?.title}</h1>
      </header>
      {clock === null ? (
        <Notice
          tone={visit.dryAccepted === null ? 'plain' : 'ok'}
          title={visit.dryAccepted === null ? 'Not wetted in this visit.' : 'Accepted as dry.'}
        />
      ) : (
        <WetClock hours={clock.hours} colour={clock.colour} since={clock.since} />
      )}
      {turnDue && (
        <Notice tone="caution" title="Turn it.">
          <p>Every 4 to 6 hours (workshop setting). Two people for a heavy wet rug.</p>
        </Notice>
      )}
      <PosturePart />
      <ReadingPart />
      {forecastHere ? <ForecastPart /> : <MassPlot />}
      <DryCheck />
      <p className="why">
        The forecast says when to look; readings at the rug and the clock decide. Mould, old insecticide and
        wet lifting can hurt people; local codes and licensed practice come first.
      </p>
    </div>
  );
}
