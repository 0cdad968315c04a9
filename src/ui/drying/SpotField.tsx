import type { RoomAnswer } from '../../contract/index.ts';
import type { postures, SpotPosition } from '../../dossier/index.ts';
import { useRoom, useRooms } from '../call/index.ts';
import { Choice, LineField, Picker } from '../kit/index.ts';
import { PositionField } from './PositionField.tsx';

type Posture = (typeof postures)[number];

/** A pole or mesh of a drying room, with the words it is known by. */
export interface ChosenSpot {
  readonly room: string;
  readonly spot: string | null;
  readonly words: string;
  /** Where along it; absent: not measured. */
  readonly position?: SpotPosition;
}

interface SpotProps {
  readonly posture: Posture | null;
  readonly chosen: ChosenSpot | null;
  readonly onChoose: (chosen: ChosenSpot | null) => void;
  readonly place: string;
  readonly onPlace: (place: string) => void;
}

/** Where it dries: a pole or mesh of a room that is set up, or any place in words. */
export function SpotField(props: SpotProps) {
  const { chosen, onChoose, place, onPlace } = props;
  const { rooms } = useRooms();
  const here = chosen?.room ?? rooms[0]?.room ?? null;
  const { answer } = useRoom(here);
  if (here === null) return <PlaceField place={place} onPlace={onPlace} />;
  return (
    <>
      {rooms.length > 1 ? (
        <Picker
          label="Room"
          options={rooms.map(({ room, body }) => ({ value: room, words: body.name }))}
          value={here}
          onChange={(room) => {
            const words = rooms.find((one) => one.room === room)?.body.name ?? '';
            onChoose({ room, spot: null, words });
          }}
        />
      ) : null}
      {answer === null ? null : <SpotChoice {...props} told={answer} />}
      {chosen === null ? <PlaceField place={place} onPlace={onPlace} /> : null}
    </>
  );
}

function PlaceField({ place, onPlace }: Pick<SpotProps, 'place' | 'onPlace'>) {
  return <LineField label="Place" value={place} onChange={onPlace} isRequired hint="pole 3, mesh 1 …" />;
}

const [elsewhere, floor] = ['elsewhere', 'floor'];

/** What a rug can hang over or lie on, as it is about to hang or lie. */
function spotsFor({ poles, meshes }: NonNullable<RoomAnswer['standing']['setUp']>, posture: Posture | null) {
  if (posture === 'hung') return poles;
  if (posture === 'flat on mesh') return meshes;
  return posture === 'flat on floor' ? [] : posture === 'face down flat' ? meshes : [...poles, ...meshes];
}

function SpotChoice(props: SpotProps & { readonly told: RoomAnswer }) {
  const { told, posture, chosen, onChoose } = props;
  const { room } = told;
  const { setUp } = told.standing;
  if (setUp === null) return null;
  const spots = spotsFor(setUp, posture);
  const onFloor = posture === 'hung' ? 'over something else here' : 'on the floor';
  return (
    <>
      <Choice
        label="Where it dries"
        columns={2}
        options={[
          ...spots.map(({ spot, name }) => ({ value: spot, words: name })),
          { value: floor, words: `${setUp.name}, ${onFloor}`, hint: 'in this room’s forecast' },
          { value: elsewhere, words: 'Elsewhere', hint: 'outside this room’s forecast' },
        ]}
        value={chosen?.room === room ? (chosen.spot ?? floor) : null}
        onChange={(spot) => {
          if (spot === elsewhere) return onChoose(null);
          const name = spots.find((one) => one.spot === spot)?.name;
          onChoose(
            name === undefined
              ? { room, spot: null, words: `${setUp.name}, ${onFloor}` }
              : { room, spot, words: `${setUp.name}, ${name}` },
          );
        }}
      />
      {chosen === null || chosen.room !== room || chosen.spot === null ? null : (
        <PositionField
          key={chosen.spot}
          told={told}
          setUp={setUp}
          spot={chosen.spot}
          posture={posture}
          position={chosen.position ?? null}
          onChange={(position) => {
            const { position: _before, ...same } = chosen;
            onChoose(position === null ? same : { ...same, position });
          }}
        />
      )}
    </>
  );
}
