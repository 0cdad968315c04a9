import { useState } from 'react';
import type { RoomFact, RoomLine, RoomRecordPart } from '../../dossier/index.ts';
import { type RoomFactNames, roomFactWords } from '../../text/roomFactWords.ts';
import { type ShownProblem, usePeople, useRoomRecord } from '../call/index.ts';
import {
  Busy,
  Button,
  Choice,
  instantWords,
  PassageField,
  ProblemNotice,
  Section,
  Sheet,
  When,
} from '../kit/index.ts';
import { useRoomView } from './roomView.ts';

/** Who recorded what of this room and when; a mistake is withdrawn with its reason and stays readable. */
export function RecordPart() {
  const { room, isOwner, standing } = useRoomView();
  const names = useFactNames();
  const [part, setPart] = useState<RoomRecordPart>('acts');
  const { lines, isLoading, more, problem } = useRoomRecord(room, part);
  const [withdrawing, setWithdrawing] = useState<RoomLine | null>(null);
  const [isClosing, setClosing] = useState(false);
  return (
    <Section title="Record of this room">
      <Choice
        label="Show"
        options={[
          { value: 'acts', words: 'What people did', hint: 'switched, opened, read, set up' },
          { value: 'sent', words: 'What sensors sent' },
        ]}
        value={part}
        onChange={setPart}
      />
      <ProblemNotice problem={problem} />
      {isLoading ? <Busy words="Reading the record" /> : null}
      {!isLoading && lines.length === 0 ? <p className="why">Nothing yet.</p> : null}
      <ol className="plain-list roomRecord">
        {lines.map((line) => (
          <Line key={line.entry} line={line} names={names} onWithdraw={() => setWithdrawing(line)} />
        ))}
      </ol>
      {more === null ? null : (
        <Button tone="ghost" wide onPress={more}>
          Earlier entries
        </Button>
      )}
      <p className="why">Nothing is ever erased: a withdrawn entry counts no more and stays readable.</p>
      {isOwner && standing.closed === null ? (
        <Button tone="ghost" onPress={() => setClosing(true)}>
          Close this room
        </Button>
      ) : null}
      {withdrawing === null ? null : (
        <ReasonSheet
          title={withdrawing.fact.type === 'RoomClosed' ? 'Open the room again' : 'Withdraw this entry'}
          why={roomFactWords(withdrawing.fact, names, withdrawing.rows).did}
          label="Reason"
          isNeeded
          act="Withdraw it"
          factOf={(reason) => ({ type: 'EntryWithdrawn', entry: withdrawing.entry, reason })}
          onClose={() => setWithdrawing(null)}
        />
      )}
      {isClosing ? (
        <ReasonSheet
          title="Close this room"
          why="It is gone from every choice and every forecast; its record stays. It closes only when no wet rug is in it, and an owner can open it again."
          label="Why"
          isNeeded={false}
          act="Close the room"
          factOf={(why) => ({ type: 'RoomClosed', ...(why === '' ? {} : { why }) })}
          onClose={() => setClosing(false)}
        />
      ) : null}
    </Section>
  );
}

function useFactNames(): RoomFactNames {
  const { setUp, standing, settings } = useRoomView();
  return {
    machine: (id) =>
      setUp.machines.find(({ machine }) => machine === id)?.name ?? 'a machine taken away since',
    sensor: (id) => standing.sensors.find(({ sensor }) => sensor === id)?.name ?? 'a sensor',
    at: (instant) => instantWords(instant),
    units: settings.units,
  };
}

function Line(props: {
  readonly line: RoomLine;
  readonly names: RoomFactNames;
  readonly onWithdraw: () => void;
}) {
  const { line, names, onWithdraw } = props;
  const { isOwner, asked } = useRoomView();
  const people = usePeople();
  const nameOf = (person: string) => people.find((one) => one.person === person)?.name ?? 'somebody';
  const { fact, withdrawn, by, at, sensor } = line;
  const { did, words } = roomFactWords(fact, names, line.rows);
  const isTheirs = isOwner || (by === asked.person.person && fact.type !== 'RoomClosed');
  return (
    <li className={withdrawn === null ? '' : 'withdrawn'}>
      <div>
        <span className="did">
          {withdrawn === null ? null : <span className="unseen">withdrawn: </span>}
          <b>{sensor ?? nameOf(by)}</b> {did}
        </span>
        <span className="why">
          <When at={fact.happenedAt ?? at} />
          {fact.happenedAt === undefined ? null : (
            <>
              , written down <When at={at} />
            </>
          )}
          {words === undefined ? '' : ` · ${words}`}
        </span>
        {withdrawn === null ? null : (
          <span className="why">
            ↳ {nameOf(withdrawn.by)} withdrew this <When at={withdrawn.at} />: {withdrawn.reason}
          </span>
        )}
      </div>
      {isTheirs && line.isWithdrawable ? (
        <Button tone="ghost" label={`Withdraw: ${did}`} onPress={onWithdraw}>
          {fact.type === 'RoomClosed' ? 'Open it again' : 'Withdraw'}
        </Button>
      ) : null}
    </li>
  );
}

/** An act that is told with its reason. */
function ReasonSheet(props: {
  readonly title: string;
  readonly why: string;
  readonly label: string;
  readonly isNeeded: boolean;
  readonly act: string;
  readonly factOf: (reason: string) => RoomFact;
  readonly onClose: () => void;
}) {
  const { title, why, label, isNeeded, act, factOf, onClose } = props;
  const { record, isBusy } = useRoomView();
  const [reason, setReason] = useState('');
  const [problem, setProblem] = useState<ShownProblem | null>(null);
  const keep = async () => {
    const answer = await record([factOf(reason.trim())]);
    if (!answer.ok) return setProblem(answer.problem);
    onClose();
  };
  return (
    <Sheet title={title} isOpen onClose={onClose}>
      <p>{why}</p>
      <PassageField label={label} value={reason} onChange={setReason} isRequired={isNeeded} />
      <ProblemNotice problem={problem} />
      <Button wide isDisabled={isBusy || (isNeeded && reason.trim() === '')} onPress={keep}>
        {act}
      </Button>
    </Sheet>
  );
}
