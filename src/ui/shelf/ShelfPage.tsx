import { useState } from 'react';
import type { ShelvedAgent } from '../../dossier/index.ts';
import { useMe, useShelf } from '../call/index.ts';
import { Busy, Button, Empty, Notice, ProblemNotice, Section, useNow } from '../kit/index.ts';
import { AgentSheet } from './AgentSheet.tsx';
import { Described } from './Described.tsx';
import { OrderPart } from './OrderPart.tsx';
import { CorrectLotSheet, LotSheet, RemoveSheet } from './stockSheets.tsx';
import { WaterPart } from './WaterPart.tsx';
import './shelf.css';

type Asking =
  | { readonly kind: 'new' }
  | { readonly kind: 'describe' | 'lot' | 'correct' | 'remove'; readonly agent: ShelvedAgent };

/** What there is to wash with: products, what is left of them, their hazards, and the water. */
export function ShelfPage() {
  const { standing, problem } = useShelf();
  const roles = useMe()?.roles ?? [];
  const keeps = roles.includes('owner') || roles.includes('washer');
  const today = new Date(useNow(60_000)).toISOString().slice(0, 10);
  const [asking, setAsking] = useState<Asking | null>(null);
  const close = () => setAsking(null);
  if (standing === null) {
    return problem === null ? <Busy words="Looking at the shelf" /> : <ProblemNotice problem={problem} />;
  }
  const there = standing.agents.filter(({ removed }) => removed === null);
  const gone = standing.agents.filter(({ removed }) => removed !== null);
  return (
    <div className="page">
      <div className="pageTop">
        <h1>Shelf</h1>
        {keeps ? <Button onPress={() => setAsking({ kind: 'new' })}>Put a product on it</Button> : null}
      </div>
      <p className="lead">
        What the plans reckon with: each bath is worked out for these products and this water.
      </p>
      <Notice tone="caution" title="The supplier’s safety data sheet comes first.">
        <p>
          Gloves and goggles, air, an eyewash within reach. Never chlorine bleach with an acid, ammonia or
          peroxide; never acid into sulfite below pH 4.
        </p>
      </Notice>
      <div className="cols two">
        <WaterPart water={standing.water} today={today} keeps={keeps} />
        <OrderPart standing={standing} today={today} />
      </div>
      {there.length === 0 ? (
        <Empty>
          <p>Nothing is on the shelf yet. Plans then state amounts of the pure chemical.</p>
        </Empty>
      ) : null}
      <div className="cols two">
        {there.map((agent) => (
          <Section key={agent.agent} title={agent.name}>
            <Described agent={agent} today={today} />
            {keeps ? (
              <div className="actions pairs">
                {(
                  [
                    ['lot', 'Lot received'],
                    ['correct', 'Correct a lot'],
                    ['describe', 'Correct'],
                    ['remove', 'Take off'],
                  ] as const
                ).map(([kind, words]) => (
                  <Button
                    key={kind}
                    tone="ghost"
                    label={`${words}: ${agent.name}`}
                    onPress={() => setAsking({ kind, agent })}
                  >
                    {words}
                  </Button>
                ))}
              </div>
            ) : null}
          </Section>
        ))}
      </div>
      {gone.length === 0 ? null : (
        <Section title="Taken off">
          <ul className="plain-list">
            {gone.map((agent) => (
              <li key={agent.agent} className="offShelf">
                <span>
                  {agent.name}
                  <span className="why">{agent.removed?.why}</span>
                </span>
                {keeps ? (
                  <Button
                    tone="ghost"
                    label={`Put back: ${agent.name}`}
                    onPress={() => setAsking({ kind: 'describe', agent })}
                  >
                    Put back
                  </Button>
                ) : null}
              </li>
            ))}
          </ul>
        </Section>
      )}
      {asking?.kind === 'new' ? <AgentSheet known={null} onClose={close} /> : null}
      {asking?.kind === 'describe' ? <AgentSheet known={asking.agent} onClose={close} /> : null}
      {asking?.kind === 'lot' ? <LotSheet agent={asking.agent} today={today} onClose={close} /> : null}
      {asking?.kind === 'correct' ? <CorrectLotSheet agent={asking.agent} onClose={close} /> : null}
      {asking?.kind === 'remove' ? <RemoveSheet agent={asking.agent} onClose={close} /> : null}
    </div>
  );
}
