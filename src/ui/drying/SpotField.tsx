import { useRoom, useRooms } from '../call/index.ts';
import { Choice, LineField, Picker } from '../kit/index.ts';

/** A pole or mesh of a drying room, with the words it is known by. */
export interface ChosenSpot {
  readonly room: string;
  readonly spot: string | null;
  readonly words: string;
}

interface SpotProps {
  readonly chosen: ChosenSpot | null;
  readonly onChoose: (chosen: ChosenSpot | null) => void;
  readonly place: string;
  readonly onPlace: (place: string) => void;
}

/** Where it dries: a pole or mesh of a room that is set up, or any place in words. */
export function SpotField(props: SpotProps) {
  const { chosen, onChoose, place, onPlace } = props;
  const { rooms } = useRooms();
  const here = chosen?.room ?? rooms[0]?.room;
  if (here === undefined) return <PlaceField place={place} onPlace={onPlace} />;
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
      <SpotChoice room={here} chosen={chosen} onChoose={onChoose} />
      {chosen === null ? <PlaceField place={place} onPlace={onPlace} /> : null}
    </>
  );
}

function PlaceField({ place, onPlace }: Pick<SpotProps, 'place' | 'onPlace'>) {
  return <LineField label="Place" value={place} onChange={onPlace} isRequired hint="pole 3, mesh 1 …" />;
}

const elsewhere = 'elsewhere';

function SpotChoice(props: Pick<SpotProps, 'chosen' | 'onChoose'> & { readonly room: string }) {
  const { room, chosen, onChoose } = props;
  const { answer } = useRoom(room);
  const setUp = answer?.standing.setUp;
  if (setUp === null || setUp === undefined) return null;
  const spots = [...setUp.poles, ...setUp.meshes];
  return (
    <Choice
      label="Where it dries"
      columns={2}
      options={[
        ...spots.map(({ spot, name }) => ({ value: spot, words: name })),
        { value: elsewhere, words: 'Elsewhere', hint: 'outside this room’s forecast' },
      ]}
      value={chosen?.room === room ? chosen.spot : null}
      onChange={(spot) => {
        const name = spots.find((one) => one.spot === spot)?.name;
        onChoose(name === undefined ? null : { room, spot, words: `${setUp.name}, ${name}` });
      }}
    />
  );
}
