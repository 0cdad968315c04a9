import { Link } from 'wouter';
import { useMe, useRooms } from '../call/index.ts';
import { Busy, Empty, newId, ProblemNotice } from '../kit/index.ts';
import './room.css';
import { RoomPage } from './RoomPage.tsx';
import { SetUpForm } from './SetUpForm.tsx';
import { usualRoom } from './usualRoom.ts';

const fresh = newId();

/** The drying rooms: one is opened at once; several stand side by side at the top. */
export function RoomsPage({ room }: { readonly room?: string }) {
  const { rooms, closed, isLoading, problem } = useRooms();
  const me = useMe();
  if (isLoading) return <Busy words="Opening the drying room" />;
  const isNew = room === 'new' || (room === undefined && rooms.length === 0 && problem === null);
  const shown = room ?? rooms[0]?.room;
  return (
    <div className="page roomPage">
      <ProblemNotice problem={problem} />
      {rooms.length > 1 || isNew ? (
        <nav className="roomTabs" aria-label="Drying rooms">
          {rooms.map((one) => (
            <Link
              key={one.room}
              href={`/rooms/${one.room}`}
              className="btn ghost"
              {...(one.room === shown ? { 'aria-current': 'page' } : {})}
            >
              {one.body.name}
            </Link>
          ))}
        </nav>
      ) : null}
      {isNew && me?.roles.includes('owner') !== true ? (
        <Empty>
          <p>No drying room is set up yet. An owner describes it once: size, poles, machines.</p>
        </Empty>
      ) : isNew ? (
        <>
          <h1>{rooms.length === 0 ? 'The drying room' : 'Another drying room'}</h1>
          <p className="lead">
            Describe the room once. What is filled in is a guess at a small room: put your own figures, since
            every forecast hangs on them.
          </p>
          <SetUpForm room={fresh} before={usualRoom} />
        </>
      ) : shown === undefined ? null : (
        <RoomPage key={shown} room={shown} />
      )}
      {closed.length === 0 ? null : (
        <details>
          <summary>Closed rooms: {closed.length}</summary>
          <div className="actions">
            {closed.map((one) => (
              <Link key={one.room} href={`/rooms/${one.room}`} className="btn ghost">
                {one.body.name}
              </Link>
            ))}
          </div>
        </details>
      )}
    </div>
  );
}
