import { useDeferredValue, useMemo } from 'react';
import { Link } from 'wouter';
import { dryForecast } from '../../core/drying/index.ts';
import { Button, Empty, ProblemNotice, Section, useKept } from '../kit/index.ts';
import { DryRoomFields, DryRugFields } from './DryFields.tsx';
import { DryResult } from './DryResult.tsx';
import './dry.css';
import { dryScenarioOf, missingOf, type TypedDrying, untouchedDrying } from './typedDrying.ts';

const names: Readonly<Partial<Record<keyof TypedDrying, string>>> = {
  areaM2: 'area',
  massKg: 'dry mass',
  together: 'number of rugs',
  volumeM3: 'size of the room',
  airC: 'room temperature',
  rhPercent: 'room humidity',
  airSpeed: 'air along the rug',
  airChanges: 'air changes',
  outsideC: 'outside temperature',
  outsideRhPercent: 'outside humidity',
  machines: 'number of dehumidifiers',
  litresPerDay: 'what a dehumidifier takes out',
  ratedC: 'its rated temperature',
  ratedRhPercent: 'its rated humidity',
};

/** Forecasts the drying of a rug from what is typed at the bench. It is worked out in this page. */
export function DryPage() {
  const [typed, setTyped, forget] = useKept<TypedDrying>('bench/dry', untouchedDrying);
  const change = (changed: Partial<TypedDrying>) => setTyped((before) => ({ ...before, ...changed }));
  // Two hundred courses are worked out anew with every key; typing goes before them.
  const settled = useDeferredValue(typed);
  const [answer, withOneMore] = useMemo(() => {
    const [scenario, more] = [dryScenarioOf(settled), dryScenarioOf(settled, 1)];
    const rated = settled.litresPerDay !== null && settled.ratedC !== null && settled.ratedRhPercent !== null;
    return [
      scenario === null ? null : dryForecast(scenario),
      more === null || !rated ? null : dryForecast(more),
    ];
  }, [settled]);
  return (
    <div className="page">
      <div className="pageTop">
        <div>
          <Link href="/bench">Bench</Link>
          <h1>Drying</h1>
          <p className="lead">What you do not know counts as its worst case. Nothing here is recorded.</p>
        </div>
        <Button tone="ghost" onPress={forget}>
          Begin anew
        </Button>
      </div>
      <div className="cols two">
        <div>
          <DryRugFields typed={typed} change={change} />
          <DryRoomFields typed={typed} change={change} />
        </div>
        <div>
          {answer === null ? (
            <Section title="When it will be dry">
              <Empty>
                Still to give:{' '}
                {missingOf(typed)
                  .map((field) => names[field] ?? field)
                  .join(', ')}
                .
              </Empty>
            </Section>
          ) : answer.ok ? (
            <DryResult
              answer={answer.value}
              withOneMore={withOneMore?.ok === true ? withOneMore.value : null}
            />
          ) : (
            <Section title="No forecast is possible">
              <ProblemNotice problem={answer.problem} />
            </Section>
          )}
        </div>
      </div>
    </div>
  );
}
