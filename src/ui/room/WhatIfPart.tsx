import { useEffect, useState } from 'react';
import type { DryAnswer } from '../../core/drying/index.ts';
import { newAlarms, openingCompared, type RoomChange, type RugMoved } from '../../dossier/index.ts';
import { dryAlarmWords } from '../../text/dryAlarmWords.ts';
import { measureWords } from '../../units/index.ts';
import { figure } from '../dossier/figures.ts';
import { Choice, instantWords, Notice, ProblemNotice, Section } from '../kit/index.ts';
import { instantOf, useRoomView } from './roomView.ts';
import type { Tried } from './useRoomWorker.ts';
import { wallWords } from './WallField.tsx';
import { WhatIfFields } from './WhatIfFields.tsx';

interface OutsideAir {
  readonly airC: number;
  readonly rh: number;
}

export type WhatKind = RoomChange['kind'];

const kinds: readonly { readonly value: WhatKind; readonly words: string }[] = [
  { value: 'add-rug', words: 'Add a rug' },
  { value: 'turn', words: 'Turn one' },
  { value: 'add-machine', words: 'Add a dehumidifier' },
  { value: 'add-fan', words: 'Add a fan' },
  { value: 'open', words: 'Open the windows tonight' },
  { value: 'take-down', words: 'Move one out' },
];

/** What a change would do to every rug here, before anybody does it. Nothing of it is recorded. */
export function WhatIfPart(props: {
  readonly tried: Tried;
  /** Null where nobody read it today. */
  readonly outside: OutsideAir | null;
  readonly ask: (change: RoomChange | null) => void;
}) {
  const { tried, outside, ask } = props;
  const { answer } = useRoomView();
  const [kind, setKind] = useState<WhatKind | null>(null);
  const [what, setWhat] = useState<RoomChange | null>(null);
  useEffect(() => ask(what), [what, ask]);
  if (answer === null) return null;
  const isToldOutside = what?.kind !== 'open' || outside !== null;
  return (
    <Section title="What if …">
      <Choice
        label="Try a change"
        columns={2}
        options={kinds}
        value={kind}
        onChange={(chosen) => {
          setKind(chosen);
          setWhat(null);
        }}
      />
      {kind === null ? null : (
        <div className="whatFields">
          <WhatIfFields key={kind} kind={kind} onWhat={setWhat} />
        </div>
      )}
      {what?.kind === 'open' ? (
        <Opened
          before={answer}
          outside={outside}
          fromHour={what.opening.fromHour}
          walls={what.wallsWPerK}
          delays={isToldOutside && delays(tried.moved ?? [], what.opening.fromHour)}
        />
      ) : null}
      <div role="status">
        <ProblemNotice problem={tried.problem} />
        {what !== null && tried.isBusy && tried.moved === null ? (
          <p className="why">Working it out …</p>
        ) : null}
        {tried.moved !== null && what !== null && isToldOutside ? (
          <Moved before={answer} tried={tried} moved={tried.moved} what={what} />
        ) : null}
      </div>
    </Section>
  );
}

/** Less than this is no change anybody would notice [h]. */
const noticeableHours = 0.25;

/** Whether a change makes rugs later and none sooner; what is dry before it begins is not moved by it. */
function delays(moved: readonly RugMoved[], fromHour: number): boolean {
  const hours = moved.flatMap(({ before, movedHours }) =>
    movedHours === null || (before !== null && before < fromHour) ? [] : [movedHours],
  );
  return hours.some((by) => by >= noticeableHours) && !hours.some((by) => by <= -noticeableHours);
}

function Moved(props: {
  readonly before: DryAnswer;
  readonly tried: Tried;
  readonly moved: readonly RugMoved[];
  readonly what: RoomChange;
}) {
  const { before, tried, moved, what } = props;
  const { names, zero, now, rugs } = useRoomView();
  const { drawn } = tried;
  const hungHour = (id: string): number => {
    const hungAt = rugs.find(({ rug }) => rug === id)?.hungAt;
    if (hungAt !== undefined) return (Date.parse(hungAt) - Date.parse(zero)) / 3_600_000;
    return what.kind === 'add-rug' ? (what.rug.hungAtHour ?? 0) : 0;
  };
  // What is past no change moves.
  const nowHour = (Date.parse(now) - Date.parse(zero)) / 3_600_000;
  return (
    <>
      <table className="moved">
        <caption className="unseen">When each rug would be dry</caption>
        <thead>
          <tr>
            <th scope="col">Rug</th>
            <th scope="col">Dry, most likely</th>
            <th scope="col">Moves by</th>
          </tr>
        </thead>
        <tbody>
          {moved.map(({ id, before: was, after, movedHours }) => {
            const isPast = was !== null && was < nowHour;
            return (
              <tr key={id}>
                <th scope="row">{id === 'sketch' ? 'the added rug' : names.rug(id)}</th>
                <td>
                  {isPast ? 'dry before' : dryWords(after, zero)}
                  {isPast || drawn === null ? null : (
                    <span className="why">{bandWords(drawn, id, hungHour(id), zero)}</span>
                  )}
                </td>
                <td>
                  {movedHours === null || isPast
                    ? '–'
                    : Math.abs(movedHours) < noticeableHours
                      ? 'no change'
                      : `${figure(Math.abs(movedHours))} h ${movedHours < 0 ? 'sooner' : 'later'}`}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
      {drawn === null ? <progress aria-label="Working out how sure it is" /> : null}
      <ul className="plain-list roomAlarms">
        {(drawn === null ? [] : newAlarms(before, drawn)).map((alarm) => (
          <li key={JSON.stringify(alarm)} className="now">
            <span aria-hidden="true">▲ </span>
            {dryAlarmWords(
              'rug' in alarm
                ? { ...alarm, rug: alarm.rug === 'sketch' ? 'the added rug' : names.rug(alarm.rug) }
                : alarm,
              names.units,
              (hour) => `at ${names.at(names.instant(hour))}`,
            )}
          </li>
        ))}
      </ul>
      <p className="why">
        From the same readings: the likely course in {seconds(tried.ms)} s
        {drawn === null ? '; how sure it is follows …' : `, the 80 % bounds in ${seconds(tried.drawnMs)} s`},
        on this device{what.kind === 'open' ? '; windows open for 8 h from now' : ''}. Nothing of it is
        recorded.
      </p>
    </>
  );
}

const seconds = (ms: number): string => (ms / 1000).toFixed(2);

const dryWords = (hour: number | null, zero: string): string =>
  hour === null ? 'not in the hours looked at' : instantWords(instantOf(zero, hour));

/** The bounds that hold 80 % of the draws. */
function bandWords(drawn: DryAnswer, id: string, hung: number, zero: string): string {
  const rug = drawn.rugs.find((one) => one.id === id);
  if (rug?.spread === undefined) return '';
  const [low, high] = rug.spread.interval80;
  if (low === null) return '80 %: beyond the hours looked at';
  const until = high === null ? 'later than looked at' : instantWords(instantOf(zero, hung + high));
  return `80 %: ${instantWords(instantOf(zero, hung + low))} – ${until}`;
}

/** Whether open windows dry the room, and what they do to its warmth. */
function Opened(props: {
  readonly before: DryAnswer;
  readonly outside: OutsideAir | null;
  readonly fromHour: number;
  readonly walls: number | undefined;
  /** By the forecast beside it, once that is there. */
  readonly delays: boolean;
}) {
  const { before, outside, fromHour, walls, delays: isLater } = props;
  const { setUp, settings } = useRoomView();
  const { units } = settings;
  const compared = outside === null ? null : openingCompared(before, outside, fromHour);
  if (outside === null || compared === null)
    return (
      <Notice tone="caution" title="The air outside was not read today.">
        <p>
          Whether open windows dry the room hangs on it alone. Read thermometer and hygrometer outside in the
          shade and put both in by “Read the air”, “Outside”: the hours are then told here.
        </p>
      </Notice>
    );
  const ratio = (of: number) => measureWords('humidityRatio', of, units);
  const dries = compared.outside < compared.room;
  return (
    <>
      <Notice
        tone={dries ? (isLater ? 'plain' : 'ok') : 'caution'}
        title={
          dries
            ? 'The air outside holds less water: open windows dry the room’s air.'
            : 'The air outside holds as much water or more: keep the windows shut.'
        }
      >
        <p>
          {ratio(compared.outside)} outside, {ratio(compared.room)} in the room: water by weight of air
          decides, never relative humidity.
        </p>
      </Notice>
      {dries && isLater ? (
        <Notice tone="caution" title="The rugs dry later all the same.">
          <p>
            By this forecast the room cools by more than its drier air wins. Keep the windows shut, or warm
            the room as well.
          </p>
        </Notice>
      ) : null}
      {setUp.wallsWPerK === undefined ? (
        <Notice tone="caution" title="How much the room cools is an estimate.">
          <p>
            Air of {measureWords('temperature', outside.airC, units)} cools the room, and a cool room dries
            slowly.{' '}
            {walls === undefined
              ? `Its walls are taken by its size: ${wallWords(setUp.volumeM3, units)}.`
              : 'Its walls are taken as you typed.'}{' '}
            Whatever keeps it warm now is taken to go on. The hours are wide; look at the thermometer after an
            hour.
          </p>
        </Notice>
      ) : null}
    </>
  );
}
