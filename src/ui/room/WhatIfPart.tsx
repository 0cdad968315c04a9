import { useEffect, useState } from 'react';
import type { DryAnswer } from '../../core/drying/index.ts';
import { movedRugs, newAlarms, openingCompared, type RoomChange } from '../../dossier/index.ts';
import { dryAlarmWords } from '../../text/dryAlarmWords.ts';
import { figure, temperatureWords } from '../dossier/figures.ts';
import { Choice, instantWords, Notice, ProblemNotice, Section } from '../kit/index.ts';
import { instantOf, useRoomView } from './roomView.ts';
import type { Worked } from './useRoomWorker.ts';
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
  readonly changed: Worked;
  /** Null where nobody read it today. */
  readonly outside: OutsideAir | null;
  readonly ask: (change: RoomChange | null) => void;
}) {
  const { changed, outside, ask } = props;
  const { answer } = useRoomView();
  const [kind, setKind] = useState<WhatKind | null>(null);
  const [what, setWhat] = useState<RoomChange | null>(null);
  useEffect(() => ask(what), [what, ask]);
  if (answer === null) return null;
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
      {kind === null ? null : <WhatIfFields key={kind} kind={kind} onWhat={setWhat} />}
      <div role="status">
        {changed.isBusy ? <p className="why">Working it out …</p> : null}
        {changed.answer?.ok === false ? <ProblemNotice problem={changed.answer.problem} /> : null}
        {changed.answer?.ok === true && what !== null ? (
          <Moved before={answer} after={changed.answer.value} what={what} outside={outside} ms={changed.ms} />
        ) : null}
      </div>
    </Section>
  );
}

/** Less than this is no change anybody would notice, and within what two hundred draws scatter [h]. */
const noticeableHours = 0.25;

function Moved(props: {
  readonly before: DryAnswer;
  readonly after: DryAnswer;
  readonly what: RoomChange;
  readonly outside: OutsideAir | null;
  readonly ms: number;
}) {
  const { before, after, what, outside, ms } = props;
  const { names, zero, setUp, now } = useRoomView();
  // What is past no change moves.
  const nowHour = (Date.parse(now) - Date.parse(zero)) / 3_600_000;
  const dry = (hour: number | null) =>
    hour === null ? 'not in the hours looked at' : instantWords(instantOf(zero, hour));
  // A room whose walls nobody described is taken to stay as warm as it is: with open windows it would not.
  const heatUnknown = what.kind === 'open' && setUp.wallsWPerK === undefined;
  return (
    <>
      {what.kind === 'open' ? (
        <Opened before={before} outside={outside} fromHour={what.opening.fromHour} />
      ) : null}
      {heatUnknown ? null : (
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
            {movedRugs(before, after).map(({ id, before: was, after: dryAt, movedHours }) => (
              <tr key={id}>
                <th scope="row">{id === 'sketch' ? 'the added rug' : names.rug(id)}</th>
                <td>{was !== null && was < nowHour ? 'dry before' : dry(dryAt)}</td>
                <td>
                  {movedHours === null || (was !== null && was < nowHour)
                    ? '–'
                    : Math.abs(movedHours) < noticeableHours
                      ? 'no change'
                      : `${figure(Math.abs(movedHours))} h ${movedHours < 0 ? 'sooner' : 'later'}`}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <ul className="plain-list roomAlarms">
        {newAlarms(before, after).map((alarm) => (
          <li key={JSON.stringify(alarm)} className="now">
            <span aria-hidden="true">▲ </span>
            {dryAlarmWords(
              'rug' in alarm
                ? { ...alarm, rug: alarm.rug === 'sketch' ? 'the added rug' : names.rug(alarm.rug) }
                : alarm,
            )}
          </li>
        ))}
      </ul>
      <p className="why">
        From the same readings, in {(ms / 1000).toFixed(1)} s on this device
        {what.kind === 'open' ? '; windows open for 8 h from now' : ''}. Nothing of it is recorded.
      </p>
    </>
  );
}

/** Whether open windows dry the room, and what they do to its warmth. */
function Opened(props: {
  readonly before: DryAnswer;
  readonly outside: OutsideAir | null;
  readonly fromHour: number;
}) {
  const { before, outside, fromHour } = props;
  const { setUp, settings } = useRoomView();
  const compared = outside === null ? null : openingCompared(before, outside, fromHour);
  if (outside === null || compared === null)
    return (
      <Notice tone="caution" title="The air outside was not read today.">
        <p>Read it outside in the shade: whether open windows dry the room hangs on it alone.</p>
      </Notice>
    );
  const grams = (ratio: number) => `${figure(ratio * 1000)} g/kg`;
  const dries = compared.outside < compared.room;
  return (
    <>
      <Notice
        tone={dries ? 'ok' : 'caution'}
        title={
          dries
            ? 'The air outside holds less water: open windows dry the room.'
            : 'The air outside holds as much water or more: keep the windows shut.'
        }
      >
        <p>
          {grams(compared.outside)} outside, {grams(compared.room)} in the room: water by kilogram of air
          decides, never relative humidity.
        </p>
      </Notice>
      {setUp.wallsWPerK === undefined ? (
        <Notice tone="caution" title="How fast it then dries is not reckoned.">
          <p>
            Air of {temperatureWords(outside.airC, settings.units)} cools the room, and a cool room dries
            slowly. Say what the walls let through, and which heaters run, under “Change the room”.
          </p>
        </Notice>
      ) : null}
    </>
  );
}
