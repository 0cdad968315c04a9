import type { Axis, PlanFacts, PlanLimit, RequiredDyeTest, WashPlan } from '../../core/wash/index.ts';
import { axisNames, axisOrder, isLimited, sourceWords, valueWords } from '../dossier/limitWords.ts';
import { LoosenList } from '../dossier/plan/LoosenList.tsx';
import { Notice, Section } from '../kit/index.ts';
import { BenchSteps } from './BenchSteps.tsx';
import { TestsAsked } from './TestsAsked.tsx';
import type { TypedTest } from './typedFacts.ts';

/** What the rug can bear, axis by axis, each limit with its reason. */
export function PlanResult(props: {
  readonly plan: WashPlan;
  readonly facts: PlanFacts;
  /** Tests that are typed, read or not. */
  readonly waiting: readonly TypedTest[];
  readonly onTest: (asked: RequiredDyeTest) => void;
}) {
  const { plan, facts, waiting, onTest } = props;
  const { basis, missingDyeTests } = plan;
  const blocking = missingDyeTests.filter(({ blocksWetWork }) => blocksWetWork);
  const axes = axisOrder.filter(
    (axis) => axis !== 'consents' && axis !== 'signOffs' && isLimited(axis, plan.bounds),
  );
  return (
    <div aria-live="polite">
      <Section title="What it can bear">
        <p className="amt">{plan.method}</p>
        <p className="why">
          The wettest method all limits still allow, for {Number(basis.areaM2.toFixed(2))} m² and{' '}
          {Number(basis.dryMassKg.toFixed(1))} kg dry
          {basis.dryMassFrom === 'weighed' ? '' : ', an estimate: not weighed'}
        </p>
        <TestsAsked tests={blocking} waiting={waiting} onTest={onTest} />
        {plan.cautions.map((caution) => (
          <Notice key={caution} tone="caution">
            {caution}
          </Notice>
        ))}
        <div className="lim">
          {axes.map((axis) => (
            <LimitRow key={axis} axis={axis} plan={plan} />
          ))}
        </div>
      </Section>
      <Section title="From here">
        <LoosenList plan={plan} />
        <BenchSteps plan={plan} />
      </Section>
      {plan.consents.length === 0 ? null : (
        <Section title="Tell the client">
          <ul>
            {plan.consents.map(({ risk, text, rule, about }) => (
              <li key={`${risk}/${about}`}>
                {text} <span className="why">{rule}</span>
              </li>
            ))}
          </ul>
        </Section>
      )}
      <Section title="On the command line">
        <details className="more">
          <summary>These facts as a file</summary>
          <p className="why">Save them as facts.json and run: npx wefthouse plan facts.json</p>
          <textarea
            className="box file"
            aria-label="Facts as JSON"
            readOnly
            rows={12}
            value={JSON.stringify(facts, null, 1)}
          />
        </details>
      </Section>
    </div>
  );
}

function LimitRow({ axis, plan }: { readonly axis: Axis; readonly plan: WashPlan }) {
  const binding = plan.limits.filter((limit) => limit.axis === axis && limit.binding);
  const reasons = [
    ...new Map(binding.map((limit) => [`${limit.rule}${limit.about}${limit.because}`, limit])).values(),
  ];
  const [first, ...others] = reasons;
  return (
    <>
      <b>{axisNames[axis]}</b>
      <div>
        {valueWords(axis, plan.bounds[axis])}
        {first === undefined ? (
          <span className="why">follows from the other limits</span>
        ) : (
          <Reason limit={first} />
        )}
        {others.length === 0 ? null : (
          <details className="more">
            <summary>{others.length === 1 ? 'One more reason' : `${others.length} more reasons`}</summary>
            {others.map((limit) => (
              <Reason key={`${limit.rule}${limit.about}${limit.because}`} limit={limit} />
            ))}
          </details>
        )}
      </div>
    </>
  );
}

function Reason({ limit }: { readonly limit: PlanLimit }) {
  return (
    <span className="why">
      {limit.because}
      {limit.about === '' ? '' : ` — ${limit.about}`} ({limit.rule}; {sourceWords(limit.source)})
      {limit.assumed ? ' Not known, so the most sensitive case is assumed.' : ''}
    </span>
  );
}
