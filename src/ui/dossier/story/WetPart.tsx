import { Link } from 'wouter';
import { agreedPlan, stepId, wetClock, wetClockHours } from '../../../dossier/index.ts';
import { blockerWords } from '../../../text/blockedWords.ts';
import { Notice } from '../../kit/index.ts';
import { useDossier } from '../dossierView.ts';
import { counted, figure } from '../figures.ts';
import { Part } from '../Part.tsx';

/** How far the wash and the drying are, with the way to both. */
export function WetPart() {
  const { rug, standing, visit, wetBlockers, now } = useDossier();
  if (visit === null) return null;
  const plan = agreedPlan(standing);
  const done = plan?.steps.filter((step) =>
    visit.steps.some((one) => one.step === stepId(step) && one.done !== null),
  ).length;
  const blockers = visit.end === null && visit.dryingStarted === null ? wetBlockers : [];
  const clock = wetClock(visit, now);
  return (
    <Part id="wet" title="Wash and dry">
      {plan === null ? (
        <p className="why">No plan is on record yet.</p>
      ) : (
        <p>
          {done} of {counted(plan.steps.length, 'step')} done
        </p>
      )}
      {blockers.length > 0 && (
        <Notice tone="caution" title="No wet step yet.">
          <ul className="plain-list">
            {blockers.map(({ code }) => (
              <li key={code}>{blockerWords[code]}</li>
            ))}
          </ul>
        </Notice>
      )}
      {clock !== null && (
        <Notice
          tone={clock.colour === 'red' ? 'stop' : clock.colour === 'amber' ? 'caution' : 'plain'}
          title={`Wet for ${figure(clock.hours)} h.`}
        >
          <p>
            Amber from {wetClockHours.amberHours} h, red from {wetClockHours.redHours} h.
          </p>
        </Notice>
      )}
      {visit.dryAccepted !== null && <p>✓ Accepted as dry, standard “{visit.dryAccepted.standard}”.</p>}
      <div className="buttons">
        <Link className="btn ghost" href={`/rugs/${rug}?at=wash`}>
          Open the wash
        </Link>
        <Link className="btn ghost" href={`/rugs/${rug}?at=dry`}>
          Open the drying
        </Link>
      </div>
    </Part>
  );
}
