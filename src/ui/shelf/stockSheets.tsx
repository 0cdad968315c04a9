import { useState } from 'react';
import { Link } from 'wouter';
import type { LotStanding, ShelfFact, ShelvedAgent } from '../../dossier/index.ts';
import { useShelfUses } from '../call/index.ts';
import {
  Busy,
  Button,
  DayField,
  LineField,
  Notice,
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
export function LotSheet({ agent, today, onClose }: StockProps & { readonly today: string }) {
  const { send, problem, isBusy } = useSheet(onClose);
  const [lot, setLot] = useState('');
  const [amount, setAmount] = useState<number | null>(agent.pack ?? null);
  const [receivedOn, setReceivedOn] = useState<string | null>(today);
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
        <DayField label="Received on" value={receivedOn} onChange={setReceivedOn} />
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
              ...(receivedOn === null ? {} : { receivedOn }),
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

/** What is truly left of a lot, and the days its container truly bears. */
export function CorrectLotSheet({ agent, onClose }: StockProps) {
  const [lot, setLot] = useState(agent.lots.at(-1)?.lot ?? '');
  const held = agent.lots.find((one) => one.lot === lot);
  return (
    <Sheet title={`Correct a lot: ${agent.name}`} isOpen onClose={onClose}>
      <div className="form">
        {held === undefined ? (
          <p>No lot was received yet.</p>
        ) : (
          <>
            <Picker label="Lot" options={agent.lots.map((one) => one.lot)} value={lot} onChange={setLot} />
            <LotFields key={lot} agent={agent} held={held} onClose={onClose} />
          </>
        )}
      </div>
    </Sheet>
  );
}

function LotFields({ agent, held, onClose }: StockProps & { readonly held: LotStanding }) {
  const { send, problem, isBusy } = useSheet(onClose);
  const [amount, setAmount] = useState<number | null>(held.amount);
  const [receivedOn, setReceivedOn] = useState(held.receivedOn ?? null);
  const [expires, setExpires] = useState(held.expires ?? null);
  const of = { agent: agent.agent, lot: held.lot };
  const areDaysOther = receivedOn !== (held.receivedOn ?? null) || expires !== (held.expires ?? null);
  const corrections: readonly ShelfFact[] = [
    ...(areDaysOther ? [{ type: 'LotCorrected', ...of, receivedOn, expires } as const] : []),
    ...(amount === null || amount === held.amount ? [] : [{ type: 'StockCounted', ...of, amount } as const]),
  ];
  return (
    <>
      <NumberField
        label="Left"
        unit={agent.unit}
        least={0}
        most={1_000_000}
        hint="As counted or weighed now."
        value={amount}
        onChange={setAmount}
        isRequired
      />
      <DayField label="Received on" value={receivedOn} onChange={setReceivedOn} />
      <DayField label="Use until" value={expires} onChange={setExpires} />
      <ProblemNotice problem={problem} />
      <Button
        wide
        isDisabled={isBusy || amount === null || corrections.length === 0}
        onPress={() => send(...corrections)}
      >
        Record the correction
      </Button>
    </>
  );
}

/** Whose plans reckon with a product. */
function Uses({ agent: { agent } }: Pick<StockProps, 'agent'>) {
  const uses = useShelfUses(agent);
  if (uses === null) return <Busy words="Looking which plans use it" />;
  if (uses.length === 0) return <p>No plan in the house is mixed from it.</p>;
  return (
    <Notice
      tone="caution"
      title={`${uses.length === 1 ? 'One plan is' : `${uses.length} plans are`} mixed from it and will say that it is gone.`}
    >
      <ul>
        {uses.map(({ rug, number, title, as }) => (
          <li key={rug}>
            <Link href={`/rugs/${rug}`}>
              {title}, dossier {number}
            </Link>
            : {as.join(', ')}
          </li>
        ))}
      </ul>
    </Notice>
  );
}

/** A product that is no longer to be used; plans that use it say so. */
export function RemoveSheet({ agent, onClose }: StockProps) {
  const { send, problem, isBusy } = useSheet(onClose);
  const [why, setWhy] = useState('');
  return (
    <Sheet title={`Take ${agent.name} off the shelf`} isOpen onClose={onClose}>
      <div className="form">
        <Uses agent={agent} />
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
