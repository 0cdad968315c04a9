import { type Extraction, extractions } from '../../core/drying/index.ts';
import { decide, dryingPlaceOf, postures, type RugFact } from '../../dossier/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { useField, useForm } from '../dossier/useForm.ts';
import { Button, Choice, Notice, ProblemNotice, Sheet } from '../kit/index.ts';
import { HeatField, type HeatTold, heatedBy, useHeatHere } from './HeatField.tsx';
import { type ChosenSpot, SpotField } from './SpotField.tsx';

type Posture = (typeof postures)[number];

const hints: { readonly [P in Posture]: string } = {
  hung: 'both faces to the air',
  'flat on mesh': 'air from below too',
  'flat on floor': 'one face to the air',
  'face down flat': 'bleeders: colour moves to the back',
};

/** Whether it stays on its pole, mesh or floor; face down it may lie on a mesh or on the floor. */
const staysPut = (before: Posture, after: Posture): boolean =>
  before === after || (before !== 'hung' && after !== 'hung' && [before, after].includes('face down flat'));

/** How it hangs or lies from now on; where, and whether heat is on there, when it is put to dry. */
export function PostureSheet(props: {
  readonly turning: boolean;
  /** Turned so that it leaves its pole or mesh: the sheet that asks where it goes. */
  readonly onMove: () => void;
  readonly onClose: () => void;
}) {
  const { turning, onMove, onClose } = props;
  const { standing, visit, asked } = useDossier();
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
            ...(chosen?.position === undefined ? {} : { position: chosen.position }),
            ...(extraction === null ? {} : { extraction }),
            ...heatedBy(heat.told),
          };
  const isDrying = visit !== null && visit.dryingStarted !== null;
  const present = visit?.turnings.at(-1)?.posture ?? visit?.dryingStarted?.posture;
  const leaves =
    turning &&
    posture !== null &&
    (dryingPlaceOf(standing)?.spot ?? null) !== null &&
    !staysPut(present ?? posture, posture);
  const may = fact === null ? null : decide(standing, fact, asked);
  const refused = may?.ok === false ? may.problem : null;
  const ready = may?.ok === true && (turning || chosen !== null || place.trim() !== '');
  return (
    <Sheet
      title={turning ? 'Turn it' : isDrying ? 'Another place' : 'Lay or hang it to dry'}
      isOpen
      onClose={onClose}
    >
      <Choice
        label="How it lies or hangs"
        columns={2}
        options={postures.map((value) => ({ value, words: value, hint: hints[value] }))}
        value={posture}
        onChange={(chosenPosture) => {
          if (posture !== null && !staysPut(posture, chosenPosture)) setChosen(null);
          setPosture(chosenPosture);
        }}
      />
      {turning && <ProblemNotice problem={refused} />}
      {leaves && (
        <Notice tone="caution" title="It leaves its place.">
          <p>
            A wet rug weighs two to three times its dry mass: lift it with the people its plan names, on a dry
            floor. Say where it comes to lie or hang, so that the room’s drawing and loads stay true.
          </p>
        </Notice>
      )}
      {!turning && posture !== null && (
        <>
          <SpotField
            posture={posture}
            chosen={chosen}
            onChoose={setChosen}
            place={place}
            onPlace={setPlace}
          />
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
      {leaves ? (
        <Button wide onPress={onMove}>
          Say where it goes
        </Button>
      ) : (
        <Button wide isDisabled={!ready || isBusy} onPress={() => fact && act(fact)}>
          {turning ? 'Turned' : isDrying ? 'It dries there now' : 'Drying has begun'}
        </Button>
      )}
    </Sheet>
  );
}
