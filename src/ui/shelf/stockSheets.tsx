import { useState } from 'react';
import type { ShelvedAgent } from '../../dossier/index.ts';
import {
  Button,
  DayField,
  LineField,
  NumberField,
  PassageField,
  Picker,
  ProblemNotice,
  Sheet,
} from '../kit/index.ts';
import { useSheet } from './useSheet.ts';

interface StockProps {
  readonly agent: ShelvedAgent;
  readonly onClose: () => void;
}

/** A container that came in. */
export function LotSheet({ agent, onClose }: StockProps) {
  const { send, problem, isBusy } = useSheet(onClose);
  const [lot, setLot] = useState('');
  const [amount, setAmount] = useState<number | null>(null);
  const [expires, setExpires] = useState<string | null>(null);
  return (
    <Sheet title={`Lot received: ${agent.name}`} isOpen onClose={onClose}>
      <div className="form">
        <LineField label="Lot" hint="from the container" value={lot} onChange={setLot} isRequired />
        <NumberField
          label="Amount"
          unit={agent.unit}
          least={0}
          most={1_000_000}
          value={amount}
          onChange={setAmount}
          isRequired
        />
        <DayField
          label="Use until"
          hint="A lot past this day is refused."
          value={expires}
          onChange={setExpires}
        />
        <ProblemNotice problem={problem} />
        <Button
          wide
          isDisabled={isBusy || lot.trim() === '' || amount === null || amount === 0}
          onPress={() =>
            send({
              ...{ type: 'LotReceived', agent: agent.agent, lot: lot.trim(), amount: amount ?? 0 },
              ...(expires === null ? {} : { expires }),
            })
          }
        >
          Record the lot
        </Button>
      </div>
    </Sheet>
  );
}

/** What is truly left of a lot. */
export function CountSheet({ agent, onClose }: StockProps) {
  const { send, problem, isBusy } = useSheet(onClose);
  const lots = agent.lots.map((one) => one.lot);
  const [lot, setLot] = useState(lots[0] ?? '');
  const [amount, setAmount] = useState<number | null>(null);
  return (
    <Sheet title={`Count: ${agent.name}`} isOpen onClose={onClose}>
      <div className="form">
        {lots.length === 0 ? (
          <p>No lot was received yet.</p>
        ) : (
          <Picker label="Lot" options={lots} value={lot} onChange={setLot} />
        )}
        <NumberField
          label="Left"
          unit={agent.unit}
          least={0}
          most={1_000_000}
          value={amount}
          onChange={setAmount}
          isRequired
        />
        <ProblemNotice problem={problem} />
        <Button
          wide
          isDisabled={isBusy || lot === '' || amount === null}
          onPress={() => send({ type: 'StockCounted', agent: agent.agent, lot, amount: amount ?? 0 })}
        >
          Record the count
        </Button>
      </div>
    </Sheet>
  );
}

/** A product that is no longer to be used; plans that use it say so. */
export function RemoveSheet({ agent, onClose }: StockProps) {
  const { send, problem, isBusy } = useSheet(onClose);
  const [why, setWhy] = useState('');
  return (
    <Sheet title={`Take ${agent.name} off the shelf`} isOpen onClose={onClose}>
      <div className="form">
        <p>Plans that use it will say that it is gone. Describing it anew puts it back.</p>
        <PassageField label="Why?" value={why} onChange={setWhy} rows={2} isRequired />
        <ProblemNotice problem={problem} />
        <Button
          wide
          tone="stop"
          isDisabled={isBusy || why.trim() === ''}
          onPress={() => send({ type: 'AgentRemoved', agent: agent.agent, why: why.trim() })}
        >
          Take it off
        </Button>
      </div>
    </Sheet>
  );
}
