import { useState } from 'react';
import { hazardWords } from '../../core/chemistry/index.ts';
import { reorderList, type ShelvedAgent, stockOf } from '../../dossier/index.ts';
import { amountText } from '../../text/amountText.ts';
import { useMe, useShelf } from '../call/index.ts';
import {
  Busy,
  Button,
  dayWords,
  Empty,
  FactList,
  Notice,
  ProblemNotice,
  Section,
  useNow,
} from '../kit/index.ts';
import { AgentSheet } from './AgentSheet.tsx';
import { CountSheet, LotSheet, RemoveSheet } from './stockSheets.tsx';
import { WaterPart } from './WaterPart.tsx';

type Asking =
  | { readonly kind: 'new' }
  | { readonly kind: 'describe' | 'lot' | 'count' | 'remove'; readonly agent: ShelvedAgent };

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
  const short = reorderList(standing, today);
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
      <WaterPart water={standing.water} today={today} keeps={keeps} />
      {short.length === 0 ? null : (
        <Notice tone="caution" title="To be ordered">
          <ul>
            {short.map((one) => (
              <li key={one.agent}>
                {one.name}: {amountText(stockOf(one, today), one.unit)} left in date, ordered below{' '}
                {amountText(one.reorderBelow ?? 0, one.unit)}
              </li>
            ))}
          </ul>
        </Notice>
      )}
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
              <div className="actions">
                {(
                  [
                    ['lot', 'Lot received'],
                    ['count', 'Count'],
                    ['describe', 'Describe anew'],
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
          <ul>
            {gone.map(({ agent, name, removed }) => (
              <li key={agent}>
                {name}: {removed?.why}
              </li>
            ))}
          </ul>
        </Section>
      )}
      {asking?.kind === 'new' ? <AgentSheet known={null} onClose={close} /> : null}
      {asking?.kind === 'describe' ? <AgentSheet known={asking.agent} onClose={close} /> : null}
      {asking?.kind === 'lot' ? <LotSheet agent={asking.agent} onClose={close} /> : null}
      {asking?.kind === 'count' ? <CountSheet agent={asking.agent} onClose={close} /> : null}
      {asking?.kind === 'remove' ? <RemoveSheet agent={asking.agent} onClose={close} /> : null}
    </div>
  );
}

function Described({ agent, today }: { readonly agent: ShelvedAgent; readonly today: string }) {
  const { parts, serves, signal, hazards, lots, unit, densityGPerMl, ph, safetySheet, supplier } = agent;
  const composition = parts.map(
    ({ kind, chemical, value, unit: of }) => `${chemical ?? kind} ${value} ${of}`,
  );
  return (
    <>
      <p className="amt">
        {amountText(stockOf(agent, today), unit)} <small>left in date</small>
      </p>
      <ul>
        {lots
          .filter(({ amount }) => amount > 0)
          .map(({ lot, amount, expires }) => (
            <li key={lot}>
              Lot {lot}: {amountText(amount, unit)}
              {expires === undefined ? '' : `, until ${dayWords(expires)}`}
              {expires !== undefined && expires < today ? <strong> ▲ expired, not to be used</strong> : null}
            </li>
          ))}
      </ul>
      <FactList
        rows={[
          { name: 'Serves as', value: serves.length === 0 ? 'nothing in the plans' : serves.join(', ') },
          { name: 'Holds', value: composition.join(', ') },
          ...(densityGPerMl === undefined ? [] : [{ name: 'Density', value: `${densityGPerMl} g/mL` }]),
          ...(ph === undefined ? [] : [{ name: 'pH', value: `${ph.value} at ${ph.gramsPerLitre} g/L` }]),
          {
            name: 'Hazards',
            value: signal === 'none' ? 'no signal word' : signal,
            why: hazards.map((code) => `${hazardWords(code)} (${code})`).join('. '),
          },
          ...(supplier === undefined ? [] : [{ name: 'Supplier', value: supplier }]),
        ]}
      />
      {safetySheet === undefined ? (
        <p className="why">No safety data sheet is linked. Ask the supplier for it.</p>
      ) : (
        <p>
          <a href={safetySheet} rel="noreferrer">
            Safety data sheet of {agent.name}
          </a>
        </p>
      )}
    </>
  );
}
