import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { SensorAnswer } from '../../contract/index.ts';
import { call, type ShownProblem } from '../call/index.ts';
import { Button, Choice, LineField, Notice, ProblemNotice, Section, Sheet, When } from '../kit/index.ts';
import { LoggerSheet } from './LoggerSheet.tsx';
import { useRoomView } from './roomView.ts';

/** What else reads the air: a logger's files, and sensors that send by themselves. */
export function SensorsPart() {
  const { standing, isOwner, record, isBusy } = useRoomView();
  const [sheet, setSheet] = useState<'sensor' | 'file' | null>(null);
  const [problem, setProblem] = useState<ShownProblem | null>(null);
  const revoke = async (sensor: string) => {
    const answer = await record([{ type: 'SensorRevoked', sensor }]);
    setProblem(answer.ok ? null : answer.problem);
  };
  return (
    <Section title="Loggers and sensors">
      <div className="actions">
        <Button tone="ghost" onPress={() => setSheet('file')}>
          Take in a logger’s file
        </Button>
        {isOwner ? (
          <Button tone="ghost" onPress={() => setSheet('sensor')}>
            Add a sensor
          </Button>
        ) : null}
      </div>
      <ul className="plain-list switches">
        {standing.sensors.map(({ sensor, name, where, issuedAt, revokedAt }) => (
          <li key={sensor}>
            <span>
              <b>{name}</b>
              <span className="why">
                {where === 'room' ? 'in the room' : 'outside'}, token given <When at={issuedAt} />
                {revokedAt === null ? '' : ', taken away '}
                {revokedAt === null ? null : <When at={revokedAt} />}
              </span>
            </span>
            {isOwner && revokedAt === null ? (
              <Button
                tone="stop"
                isDisabled={isBusy}
                onPress={() => revoke(sensor)}
                label={`${name}: take its token away`}
              >
                Take its token away
              </Button>
            ) : null}
          </li>
        ))}
      </ul>
      <ProblemNotice problem={problem} />
      {sheet === 'sensor' ? <SensorSheet onClose={() => setSheet(null)} /> : null}
      {sheet === 'file' ? <LoggerSheet onClose={() => setSheet(null)} /> : null}
    </Section>
  );
}

function SensorSheet({ onClose }: { readonly onClose: () => void }) {
  const { room } = useRoomView();
  const cache = useQueryClient();
  const [name, setName] = useState('');
  const [where, setWhere] = useState<'room' | 'outside'>('room');
  const [problem, setProblem] = useState<ShownProblem | null>(null);
  const [issued, setIssued] = useState<SensorAnswer | null>(null);
  const add = async () => {
    const path = `/api/rooms/${encodeURIComponent(room)}/sensors`;
    const answer = await call<SensorAnswer>(path, { method: 'POST', body: { name: name.trim(), where } });
    if (!answer.ok) return setProblem(answer.problem);
    setProblem(null);
    setIssued(answer.value);
    await cache.invalidateQueries({ queryKey: ['rooms', room] });
  };
  if (issued !== null) {
    const address = `${window.location.origin}/api/rooms/${room}/readings`;
    return (
      <Sheet title={`Token of ${name}`} isOpen onClose={onClose}>
        <Notice tone="caution" title="It is shown this once.">
          <p>
            Put it into the device now. Only a hash of it is kept here; a lost one is replaced by a new
            sensor.
          </p>
        </Notice>
        <p className="token">
          <code>{issued.token}</code>
        </p>
        <pre className="token">{`curl ${address} \\
  -H 'authorization: Bearer ${issued.token}' \\
  -H 'content-type: application/json' \\
  -d '{"readings":[{"temperatureC":29.1,"humidity":0.51}]}'`}</pre>
        <Button wide onPress={onClose}>
          It is in the device
        </Button>
      </Sheet>
    );
  }
  return (
    <Sheet title="Add a sensor" isOpen onClose={onClose}>
      <LineField label="Name" value={name} onChange={setName} isRequired hint="what is written on it" />
      <Choice
        label="It measures"
        options={[
          { value: 'room', words: 'The air of the room' },
          { value: 'outside', words: 'The air outside' },
        ]}
        value={where}
        onChange={setWhere}
      />
      <ProblemNotice problem={problem} />
      <Button wide isDisabled={name.trim() === ''} onPress={add}>
        Give it a token
      </Button>
    </Sheet>
  );
}
