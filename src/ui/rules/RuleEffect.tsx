import { Link } from 'wouter';
import type { AffectedRug, RulePreviewAnswer } from '../../contract/index.ts';
import type { Tightening } from '../../core/wash/index.ts';
import type { PlanInShort } from '../../dossier/index.ts';
import { axisNames, valueWords } from '../dossier/limitWords.ts';
import { Notice } from '../kit/index.ts';

const planWords = (plan: PlanInShort): string => (plan.kind === 'plan' ? plan.method : 'no plan possible');

const axisLine = ({ axis, from, to }: Tightening): string =>
  `${axisNames[axis]}: ${valueWords(axis, from)} → ${valueWords(axis, to)}`;

/** Whether a change moves more of a plan than its steps, amounts and reasons. */
const movesLimits = ({ before, after, tighter, looser, againstAgreed }: AffectedRug): boolean =>
  planWords(before) !== planWords(after) || tighter.length + looser.length + againstAgreed.length > 0;

/** Which open plans a change moves, and how. */
export function RuleEffect({
  effect,
  isOfFloor,
}: {
  readonly effect: RulePreviewAnswer;
  /** Whether the value judges readings and work on the wash floor rather than the plan itself. */
  readonly isOfFloor: boolean;
}) {
  const { looked, affected } = effect;
  if (affected.length === 0) {
    return (
      <Notice tone="ok" title="No open plan changes.">
        <p>{looked === 1 ? 'One rug' : `${looked} rugs`} in the house planned anew.</p>
        {isOfFloor ? <p>It judges every reading on the wash floor from now on.</p> : null}
      </Notice>
    );
  }
  const moved = affected.filter(movesLimits);
  const quiet = affected.filter((one) => !movesLimits(one));
  const held = affected.filter(({ againstAgreed }) => againstAgreed.length > 0).length;
  return (
    <div role="status">
      <Notice
        tone={held > 0 ? 'caution' : 'plain'}
        title={`${affected.length} of ${looked} open plans change${held > 0 ? `; ${held} wait for a new consent` : ''}.`}
      />
      <ul className="rows">
        {moved.map((one) => (
          <Affected key={one.rug} affected={one} />
        ))}
      </ul>
      {quiet.length === 0 ? null : (
        <details>
          <summary>
            {quiet.length === 1 ? 'One keeps its limits' : `${quiet.length} keep their limits`}; steps,
            amounts or reasons change
          </summary>
          <ul className="rows">
            {quiet.map(({ rug, number, title }) => (
              <li key={rug} className="ruleChange">
                <Link href={`/rugs/${rug}`}>
                  {title}, dossier {number}
                </Link>
              </li>
            ))}
          </ul>
        </details>
      )}
    </div>
  );
}

function Affected({ affected }: { readonly affected: AffectedRug }) {
  const { rug, number, title, before, after, tighter, looser, againstAgreed } = affected;
  const [was, is] = [planWords(before), planWords(after)];
  return (
    <li className="ruleChange">
      <Link href={`/rugs/${rug}`}>
        {title}, dossier {number}
      </Link>
      {was === is ? null : (
        <div>
          {was} → <b>{is}</b>
        </div>
      )}
      {tighter.map((one) => (
        <div key={one.axis}>tighter: {axisLine(one)}</div>
      ))}
      {looser.map((one) => (
        <div key={one.axis}>looser: {axisLine(one)}</div>
      ))}
      {againstAgreed.length > 0 ? (
        <div>▲ Tighter than the client agreed to: wet work waits for a new consent.</div>
      ) : null}
    </li>
  );
}
