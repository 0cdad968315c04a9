import { useState } from 'react';
import { runs, windowsOpen } from '../../dossier/index.ts';
import { measureWords, unitOf } from '../../units/index.ts';
import { figure } from '../dossier/figures.ts';
import { Button, Choice, Notice, ProblemNotice, Section, Sheet, useKept, When } from '../kit/index.ts';
import { ReadingPad, type Slot, type Typed, valueIn, warmthIn } from '../wash/ReadingPad.tsx';
import { useRoomView } from './roomView.ts';

type Where = 'room' | 'outside';
type Key = 'airC' | 'rh';

/** The air as it was read last, and the switches of everything that moves it. */
export function AirPart() {
  const { standing, setUp, settings, record, isBusy } = useRoomView();
  const { units } = settings;
  const [isReading, setReading] = useState(false);
  const [problem, setProblem] = useState<Parameters<typeof ProblemNotice>[0]['problem']>(null);
  const put = async (fact: Parameters<typeof record>[0][number]) => {
    const answer = await record([fact]);
    setProblem(answer.ok ? null : answer.problem);
  };
  const open = windowsOpen(standing);
  const read = (where: Where) => {
    const of = standing[where];
    return {
      airC: of.findLast((one) => one.airC !== undefined)?.airC,
      rh: of.findLast((one) => one.rh !== undefined)?.rh,
      last: of.at(-1),
    };
  };
  return (
    <Section title="Air and machines">
      <div className="airTiles">
        {(['room', 'outside'] as const).map((where) => {
          const { airC, rh, last } = read(where);
          return (
            <div key={where} className="airTile">
              <span className="name">{where === 'room' ? 'In the room' : 'Outside'}</span>
              <b className="big">
                {airC === undefined
                  ? `– ${unitOf('temperature', units)}`
                  : measureWords('temperature', airC, units)}
              </b>
              <b className="big">{rh === undefined ? '– % RH' : `${figure(rh * 100, 0)} % RH`}</b>
              <span className="why">
                {last === undefined ? (
                  'not read yet'
                ) : (
                  <>
                    <When at={last.when} />
                    {last.from === undefined ? '' : `, ${last.from}`}
                  </>
                )}
              </span>
            </div>
          );
        })}
      </div>
      <Button wide onPress={() => setReading(true)}>
        Read the air
      </Button>
      <ul className="plain-list switches">
        {setUp.machines.map(({ machine, name, kind }) => {
          const on = runs(standing, machine);
          const since = standing.switches[machine]?.at(-1)?.when;
          return (
            <li key={machine}>
              <span>
                <b>{name}</b>
                <span className="why">
                  {kind}, {on ? 'runs' : 'stands still'}
                  {since === undefined ? '' : ' since '}
                  {since === undefined ? null : <When at={since} />}
                </span>
              </span>
              <Button
                tone={on ? 'ghost' : 'act'}
                isPressed={on}
                isDisabled={isBusy}
                label={`${name}: I switched it ${on ? 'off' : 'on'}`}
                onPress={() => put({ type: 'MachineSwitched', machine, on: !on })}
              >
                {on ? 'I switched it off' : 'I switched it on'}
              </Button>
            </li>
          );
        })}
        <li>
          <span>
            <b>Windows</b>
            <span className="why">{open ? 'open' : 'shut'}</span>
          </span>
          <Button tone="ghost" isDisabled={isBusy} onPress={() => put({ type: 'WindowSet', open: !open })}>
            {open ? 'I shut them' : 'I opened them'}
          </Button>
        </li>
      </ul>
      <ProblemNotice problem={problem} />
      <Notice tone="caution" title="Wet floor, machines and warm air">
        <p>
          Dry hands at switches, cables off the floor, a residual-current device; local electrical code comes
          first. A closed warm room strains the heart: drink, go in for minutes, leave the door free. No
          heater at the face of a rug, none beside solvent.
        </p>
      </Notice>
      {isReading ? <AirSheet onClose={() => setReading(false)} /> : null}
    </Section>
  );
}

const nothing: Typed<Key> = {};

/** One look at thermometer and hygrometer, on large keys. */
function AirSheet({ onClose }: { readonly onClose: () => void }) {
  const { room, settings, record, isBusy } = useRoomView();
  const [typed, setTyped, forget] = useKept<Typed<Key>>(`room/${room}/air`, nothing);
  const [where, setWhere] = useState<Where>('room');
  const [problem, setProblem] = useState<Parameters<typeof ProblemNotice>[0]['problem']>(null);
  const slots: readonly Slot<Key>[] = [
    { key: 'airC', name: 'Temperature', ...warmthIn(settings.units, -40, 60) },
    { key: 'rh', name: 'Humidity', unit: '% RH', least: 0, most: 100 },
  ];
  const value = Object.fromEntries(slots.map((slot) => [slot.key, valueIn(slot, typed)])) as {
    readonly [K in Key]: number | null;
  };
  const isFit =
    slots.every((slot) => (typed[slot.key] ?? '') === '' || value[slot.key] !== null) &&
    (value.airC !== null || value.rh !== null);
  const keep = async () => {
    const answer = await record([
      {
        type: 'AirRead',
        where,
        ...(value.airC === null ? {} : { airC: value.airC }),
        ...(value.rh === null ? {} : { rh: value.rh / 100 }),
      },
    ]);
    if (!answer.ok) return setProblem(answer.problem);
    forget();
    onClose();
  };
  return (
    <Sheet title="Read the air" isOpen onClose={onClose}>
      <Choice
        label="Where"
        options={[
          { value: 'room', words: 'In the room', hint: 'among the rugs, not at the machine' },
          { value: 'outside', words: 'Outside', hint: 'in the shade' },
        ]}
        value={where}
        onChange={setWhere}
      />
      <ReadingPad slots={slots} typed={typed} onChange={setTyped} />
      <ProblemNotice problem={problem} />
      <Button wide isDisabled={!isFit || isBusy} onPress={keep}>
        Record the reading
      </Button>
    </Sheet>
  );
}
