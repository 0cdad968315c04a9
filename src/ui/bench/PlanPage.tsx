import { Link } from 'wouter';
import { planWash, type RequiredDyeTest } from '../../core/wash/index.ts';
import { Button, Empty, newId, ProblemNotice, Section, useKept } from '../kit/index.ts';
import { BathFields } from './BathFields.tsx';
import { ColourFields } from './ColourFields.tsx';
import { ConditionFields } from './ConditionFields.tsx';
import { PlanResult } from './PlanResult.tsx';
import { RugFields } from './RugFields.tsx';
import { nothingKnown, planFactsOfTyped, type TypedFacts, typedTestOf } from './typedFacts.ts';

/** Plans a wash from facts typed at the bench. It is worked out in this page with every key pressed. */
export function PlanPage() {
  const [typed, setTyped, forget] = useKept<TypedFacts>('bench/plan/2', nothingKnown);
  const change = (changed: Partial<TypedFacts>) => setTyped((before) => ({ ...before, ...changed }));
  const addTest = (asked: RequiredDyeTest) =>
    change({ tests: [...typed.tests, typedTestOf(newId(), asked)] });
  const facts = planFactsOfTyped(typed);
  const plan = facts === null ? null : planWash(facts);
  return (
    <div className="page">
      <div className="pageTop">
        <div>
          <Link className="crumb" href="/bench">
            Bench
          </Link>
          <h1>Plan a wash</h1>
          <p className="lead">What you do not know counts as its worst case. Nothing here is recorded.</p>
        </div>
        <Button tone="ghost" onPress={forget}>
          Begin anew
        </Button>
      </div>
      <div className="cols two">
        <div>
          <RugFields typed={typed} change={change} />
          <ColourFields typed={typed} change={change} />
          <ConditionFields typed={typed} change={change} />
          <BathFields typed={typed} change={change} />
        </div>
        <div id="plan">
          {facts === null || plan === null ? (
            <Section title="The plan">
              <Empty>Give length and width first: every amount is worked out from the area.</Empty>
            </Section>
          ) : plan.ok ? (
            <PlanResult plan={plan.value} facts={facts} waiting={typed.tests} onTest={addTest} />
          ) : (
            <Section title="No plan is possible">
              <ProblemNotice problem={plan.problem} />
            </Section>
          )}
        </div>
      </div>
      {plan === null ? null : (
        <a className="short" href="#plan">
          <b>{plan.ok ? plan.value.method : 'no plan'}</b>{' '}
          {plan.ok ? 'See why, and what would loosen it' : 'See why'}
        </a>
      )}
    </div>
  );
}
