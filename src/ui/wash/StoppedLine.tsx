import { agreedPlan, stopSaid } from '../../dossier/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { rescueCard } from './rescue.ts';

/** Over a sheet that hides the rescue card: that the wash stands still, and what comes first. */
export function StoppedLine() {
  const { standing, visit, settings } = useDossier();
  const open = visit?.stops.find(({ cleared }) => cleared === null)?.called;
  if (open === undefined) return null;
  const [first] = rescueCard(open.condition, agreedPlan(standing)).do;
  return (
    <p className="verdict stop" role="alert">
      <span aria-hidden="true">▲ </span>
      Stopped: {stopSaid(open, settings.units)} {first}
    </p>
  );
}
