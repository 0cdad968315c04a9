import { type Extraction, extractions } from '../../core/drying/index.ts';
import { decide, postures, type RugFact } from '../../dossier/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { useField, useForm } from '../dossier/useForm.ts';
import { Button, Choice, ProblemNotice, Sheet } from '../kit/index.ts';
import { HeatField, type HeatTold, heatedBy, useHeatHere } from './HeatField.tsx';
import { type ChosenSpot, SpotField } from './SpotField.tsx';

type Posture = (typeof postures)[number];

const hints: { readonly [P in Posture]: string } = {
  hung: 'both faces to the air',
  'flat on mesh': 'air from below too',
  'flat on floor': 'one face to the air',
  'face down flat': 'bleeders: colour moves to the back',
};

/** How it hangs or lies from now on; where, and whether heat is on there, when it is put to dry. */
export function PostureSheet(props: { readonly turning: boolean; readonly onClose: () => void }) {
  const { turning, onClose } = props;
  const { standing, asked } = useDossier();
  const { form, act, isBusy, problem } = useForm('posture', onClose);
  const [posture, setPosture] = useField<Posture | null>(form, 'posture', null);
  const [place, setPlace] = useField(form, 'place', '');
  const [extraction, setExtraction] = useField<Extraction | null>(form, 'extraction', null);
  const [chosen, setChosen] = useField<ChosenSpot | null>(form, 'spot', null);
  const [heatTold, setHeat] = useField<HeatTold | null>(form, 'heat', null);
  const heat = useHeatHere(chosen?.room ?? null, heatTold);
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
            ...heatedBy(heat.told),
          };
  const may = fact === null ? null : decide(standing, fact, asked);
  const refused = may?.ok === false ? may.problem : null;
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
      {turning && <ProblemNotice problem={refused} />}
      {!turning && (
        <>
          <SpotField chosen={chosen} onChoose={setChosen} place={place} onPlace={setPlace} />
          <HeatField heat={heat} onChange={setHeat} />
          <ProblemNotice problem={refused} />
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
