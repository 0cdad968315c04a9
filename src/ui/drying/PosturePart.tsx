import { useState } from 'react';
import { type Extraction, extractions } from '../../core/drying/index.ts';
import { agreedPlan, decide, postures, type RugFact } from '../../dossier/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { counted } from '../dossier/figures.ts';
import { Part } from '../dossier/Part.tsx';
import { useField, useForm } from '../dossier/useForm.ts';
import { Button, Choice, ProblemNotice, Sheet, When } from '../kit/index.ts';
import { type ChosenSpot, SpotField } from './SpotField.tsx';

type Posture = (typeof postures)[number];

const hints: { readonly [P in Posture]: string } = {
  hung: 'both faces to the air',
  'flat on mesh': 'air from below too',
  'flat on floor': 'one face to the air',
  'face down flat': 'bleeders: colour moves to the back',
};

function PostureSheet({ turning, onClose }: { readonly turning: boolean; readonly onClose: () => void }) {
  const { standing, asked } = useDossier();
  const { form, act, isBusy, problem } = useForm('posture', onClose);
  const [posture, setPosture] = useField<Posture | null>(form, 'posture', null);
  const [place, setPlace] = useField(form, 'place', '');
  const [extraction, setExtraction] = useField<Extraction | null>(form, 'extraction', null);
  const [chosen, setChosen] = useField<ChosenSpot | null>(form, 'spot', null);
  const fact: RugFact | null =
    posture === null
      ? null
      : turning
        ? { type: 'RugTurned', posture }
        : {
            ...{ type: 'DryingStarted', posture, place: chosen?.words ?? place.trim() },
            ...(chosen === null ? {} : { room: chosen.room }),
            ...(chosen === null || chosen.spot === null ? {} : { spot: chosen.spot }),
            ...(extraction === null ? {} : { extraction }),
          };
  const may = fact === null ? null : decide(standing, fact, asked);
  const ready = may?.ok === true && (turning || chosen !== null || place.trim() !== '');
  return (
    <Sheet title={turning ? 'Turn it' : 'Lay or hang it to dry'} isOpen onClose={onClose}>
      <Choice
        label="How it lies or hangs"
        columns={2}
        options={postures.map((value) => ({ value, words: value, hint: hints[value] }))}
        value={posture}
        onChange={setPosture}
      />
      {may?.ok === false && <ProblemNotice problem={may.problem} />}
      {!turning && (
        <>
          <SpotField chosen={chosen} onChoose={setChosen} place={place} onPlace={setPlace} />
          <Choice
            label="How water was taken out"
            columns={2}
            hint="It stands for the water in the rug until somebody weighs it."
            options={extractions.map((value) => ({ value, words: value }))}
            value={extraction}
            onChange={setExtraction}
          />
        </>
      )}
      <ProblemNotice problem={problem} />
      <Button wide isDisabled={!ready || isBusy} onPress={() => fact && act(fact)}>
        {turning ? 'Turned' : 'Drying has begun'}
      </Button>
    </Sheet>
  );
}

/** Where and how it dries, and when it was turned last. */
export function PosturePart() {
  const { standing, visit, open, nameOf } = useDossier();
  const [sheet, setSheet] = useState<'start' | 'turn' | null>(null);
  const bounds = agreedPlan(standing)?.bounds;
  if (visit === null) return null;
  const started = visit.dryingStarted;
  const turned = visit.turnings.at(-1);
  return (
    <Part id="posture" title="Posture and place">
      {started === null ? (
        <p className="why">Not yet put to dry. Air within 15 minutes of extraction (workshop setting).</p>
      ) : (
        <p>
          <b>{turned?.posture ?? started.posture}</b>, {standing.place ?? started.place}
          <span className="why">
            since <When at={started.when} />, {nameOf(started.by)}
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
          The plan: {bounds.dryingPosture}, air at most {bounds.dryingTemperatureC} °C
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
      {sheet !== null && <PostureSheet turning={sheet === 'turn'} onClose={() => setSheet(null)} />}
    </Part>
  );
}
