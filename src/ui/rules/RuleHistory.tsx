import type { RulebookAnswer } from '../../contract/index.ts';
import { ruleEntryAt, shippedRulebook } from '../../core/wash/index.ts';
import { Section, When } from '../kit/index.ts';
import { ruleName, ruleValue } from './ruleWords.ts';

/** Who changed what, when and why, the newest first. */
export function RuleHistory({ history }: { readonly history: RulebookAnswer['history'] }) {
  if (history.length === 0) return null;
  return (
    <Section title="Changes made here">
      <ul className="rows">
        {[...history].reverse().map(({ address, from, to, why, byName, at }) => {
          const entry = ruleEntryAt(shippedRulebook, address);
          if (entry === null) return null;
          const read = (value: unknown) => ruleValue(entry, value === null ? entry.value : value);
          return (
            <li key={`${address} ${at}`} className="ruleChange">
              <b>
                {entry.group === 'rule' ? `${entry.row} ` : ''}
                {entry.title}: {ruleName(entry)}
              </b>
              <div>
                {read(from)} → {read(to)}
                {to === null ? ' (as delivered)' : ''}
              </div>
              <div>“{why}”</div>
              <div className="why">
                {byName}, <When at={at} />
              </div>
            </li>
          );
        })}
      </ul>
    </Section>
  );
}
