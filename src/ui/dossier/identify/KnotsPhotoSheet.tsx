import { sizeOf } from '../../../dossier/index.ts';
import { sendPhotograph } from '../../call/index.ts';
import { useCards } from '../../card/useCards.ts';
import { Busy, Button, ProblemNotice, Sheet } from '../../kit/index.ts';
import { PlacesCounter } from '../../weave/PlacesCounter.tsx';
import type { CountedPlace } from '../../weave/placeCount.ts';
import { countOf, type SaidNodes } from '../../weave/rugCount.ts';
import { useDossier } from '../dossierView.ts';
import { counted } from '../figures.ts';
import { noItems, useField, useForm } from '../useForm.ts';
import { repairPlaces } from './repairPlaces.ts';

/** Counting on photographs of several places; each is sent when its place is kept, all are recorded as one. */
export function KnotsPhotoSheet({ onClose }: { readonly onClose: () => void }) {
  const { standing, settings, visit } = useDossier();
  const { bars, isLoading } = useCards();
  const { form, act, isBusy, problem } = useForm('knots on photographs', onClose);
  const [places, setPlaces] = useField<readonly CountedPlace[]>(form, 'places', noItems);
  const [nodes, setNodes] = useField<SaidNodes>(form, 'nodes', 'unknown');
  const count = countOf(places, nodes);
  const tag = visit?.received.tag.toUpperCase();
  return (
    <Sheet title="Count knots on photographs" isOpen isWide onClose={onClose}>
      <p className="why">
        The back of the rug, flat and sharp, straight from above, with the weave card on it. Five places are
        good: the middle and towards each corner.
      </p>
      {isLoading ? (
        <Busy words="Looking up measured cards" />
      ) : (
        <PlacesCounter
          places={places}
          onPlaces={setPlaces}
          nodes={nodes}
          onNodes={setNodes}
          known={{ bars, ...(tag === undefined ? {} : { tag }) }}
          keepPhoto={sendPhotograph}
          units={settings.units}
          areaM2={sizeOf(standing)?.areaM2 ?? null}
          marks={repairPlaces(standing)}
        >
          {problem && <ProblemNotice problem={problem} />}
          <Button
            wide
            isDisabled={count === null || isBusy}
            onPress={() => {
              if (count !== null) act({ type: 'KnotsCounted', ...count });
            }}
          >
            Record {counted(places.length, 'place')}
          </Button>
        </PlacesCounter>
      )}
    </Sheet>
  );
}
