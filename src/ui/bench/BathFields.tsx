import { agents } from '../../core/wash/index.ts';
import { ManyChoice, NumberField, Section } from '../kit/index.ts';
import type { FactsProps } from './RugFields.tsx';

const options = agents.filter((agent) => agent !== 'water').map((agent) => ({ value: agent, words: agent }));

/** A bath of one's own beyond what the plan proposes: alkali asks for its challenge, and some are refused. */
export function BathFields({ typed, change }: FactsProps) {
  const { bathAgents, bathPh } = typed;
  return (
    <Section title="A bath of your own">
      <div className="form">
        <details className="more">
          <summary>
            {bathAgents.length === 0 ? 'None. Choose what it would hold' : bathAgents.join(', ')}
          </summary>
          <ManyChoice
            label="What is in it"
            options={options}
            value={bathAgents}
            onChange={(chosen) => change({ bathAgents: chosen })}
          />
        </details>
        {bathAgents.length === 0 ? null : (
          <NumberField
            label="Its pH"
            unit="pH"
            least={0}
            most={14}
            hint="Not known counts as the worst."
            value={bathPh}
            onChange={(ph) => change({ bathPh: ph })}
          />
        )}
      </div>
    </Section>
  );
}
