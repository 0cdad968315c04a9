import { useState } from 'react';
import { agreedPlan, dryingPlaceOf } from '../../dossier/index.ts';
import { dryingHeatWords } from '../../text/dryingHeatWords.ts';
import { measureWords } from '../../units/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { counted } from '../dossier/figures.ts';
import { Part } from '../dossier/Part.tsx';
import { Button, When } from '../kit/index.ts';
import { PostureSheet } from './PostureSheet.tsx';

/** Where and how it dries, and when it was turned last. */
export function PosturePart() {
  const { standing, visit, open, nameOf, settings } = useDossier();
  const [sheet, setSheet] = useState<'start' | 'turn' | null>(null);
  const bounds = agreedPlan(standing)?.bounds;
  if (visit === null) return null;
  const started = visit.dryingStarted;
  const turned = visit.turnings.at(-1);
  const position = dryingPlaceOf(standing)?.position ?? null;
  return (
    <Part id="posture" title="Posture and place">
      {started === null ? (
        <p className="why">Not yet put to dry. Air within 15 minutes of extraction (workshop setting).</p>
      ) : (
        <p>
          <b>{turned?.posture ?? started.posture}</b>, {standing.place ?? started.place}
          {position === null
            ? ''
            : `, ${measureWords('gap', position.mm, settings.units)} from the ${position.from} end`}
          <span className="why">
            since <When at={started.when} />, {nameOf(started.by)} · {dryingHeatWords(started.heated)}
            {turned !== undefined && (
              <>
                {' '}
                · turned <When at={turned.when} /> by {nameOf(turned.by)},{' '}
                {counted(visit.turnings.length, 'time')} in all
              </>
            )}
          </span>
        </p>
      )}
      {bounds !== undefined && (
        <p className="why">
          The plan: {bounds.dryingPosture}, air at most{' '}
          {measureWords('temperature', bounds.dryingTemperatureC, settings.units)}
          {bounds.requiredActs.includes('air to the back') ? ', air to the back' : ''}; no sun, no heater on
          the face.
        </p>
      )}
      {open && visit.dryAccepted === null && (
        <div className="buttons">
          {started === null ? (
            <Button wide onPress={() => setSheet('start')}>
              Lay or hang it to dry
            </Button>
          ) : (
            <>
              <Button onPress={() => setSheet('turn')}>Turn it</Button>
              <Button tone="ghost" onPress={() => setSheet('start')}>
                Another place
              </Button>
            </>
          )}
        </div>
      )}
      {sheet !== null && (
        <PostureSheet
          key={sheet}
          turning={sheet === 'turn'}
          onMove={() => setSheet('start')}
          onClose={() => setSheet(null)}
        />
      )}
    </Part>
  );
}
