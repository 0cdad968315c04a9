import { useEffect, useRef, useState } from 'react';
import { Link } from 'wouter';
import type { PlanStep } from '../../core/wash/index.ts';
import { agreedPlan, stepId, wetSince } from '../../dossier/index.ts';
import { useMe } from '../call/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { ShelfGaps } from '../dossier/plan/ShelfGaps.tsx';
import { Button, Empty, Notice, ProblemNotice, Tag, TimerFace } from '../kit/index.ts';
import { BathPart } from './BathPart.tsx';
import { DifferentialPart } from './DifferentialPart.tsx';
import { FlowPart } from './FlowPart.tsx';
import { ResiduePart } from './ResiduePart.tsx';
import { SizePart } from './SizePart.tsx';
import { SpotPart } from './SpotPart.tsx';
import { StepCard } from './StepCard.tsx';
import { StopPart, StopSheet } from './StopPart.tsx';
import { UndoBar } from './UndoBar.tsx';
import { WetMinutesPlot } from './WetMinutesPlot.tsx';
import './wash.css';

function Blockers() {
  const { rug, wetBlockers } = useDossier();
  const blockers = wetBlockers.filter(({ code }) => code !== 'stop-not-cleared');
  if (blockers.length === 0) return null;
  return (
    <>
      {blockers.map((blocker) => (
        <ProblemNotice key={blocker.code} problem={blocker} />
      ))}
      <Link className="btn ghost wide" href={`/rugs/${rug}`}>
        Open the dossier
      </Link>
    </>
  );
}

/** Whoever starts or ends a step sees the step at hand from its top; on other tablets nothing moves. */
function useStepInView() {
  const { entries } = useDossier();
  const me = useMe();
  const last = entries.at(-1);
  const followed = useRef(last?.id);
  useEffect(() => {
    if (last === undefined || followed.current === last.id) return;
    followed.current = last.id;
    const { type } = last.fact;
    if ((type !== 'StepStarted' && type !== 'StepDone') || last.by !== me?.person) return;
    const card = document.querySelector('.step-now');
    // Once it runs, its clock and what ends it are wanted; before that, what to do and to mix.
    const wanted = type === 'StepStarted' ? card?.querySelector('.timer') : card;
    (wanted ?? card)?.scrollIntoView({ block: 'start' });
  }, [last, me]);
}

function Steps(props: { readonly some: readonly PlanStep[]; readonly present: PlanStep | undefined }) {
  const { some, present } = props;
  const { standing, visit } = useDossier();
  const steps = agreedPlan(standing)?.steps ?? [];
  if (some.length === 0) return null;
  return (
    <ol className="wash-steps">
      {some.map((step) => (
        <StepCard
          key={stepId(step)}
          step={step}
          steps={steps}
          known={visit?.steps.find((one) => one.step === stepId(step))}
          isPresent={step === present}
        />
      ))}
    </ol>
  );
}

/** The plan as a list of large steps, one touch to start and to finish; one column, for wet hands. */
export function WashView() {
  const { rug, standing, visit, open } = useDossier();
  const [stopping, setStopping] = useState(false);
  useEffect(() => {
    scrollTo(0, 0);
  }, []);
  const plan = agreedPlan(standing);
  useStepInView();
  if (visit === null) return null;
  const doneOf = (id: string) => visit.steps.find((one) => one.step === id);
  const steps = plan?.steps ?? [];
  const behind = steps.filter((step) => (doneOf(stepId(step))?.done ?? null) !== null);
  const ahead = steps.filter((step) => !behind.includes(step));
  const [present] = ahead;
  const isAtHand = (step: PlanStep) => step === present || (doneOf(stepId(step))?.started ?? null) !== null;
  const wetAhead = plan === null || ahead.some(({ wet }) => wet);
  const wet = wetSince(visit);
  const extracted = behind.some(({ kind }) => kind === 'extract');
  return (
    <div className="page wash">
      <header className="wash-head">
        <Link className="btn ghost" href={`/rugs/${rug}`}>
          ‹ Dossier
        </Link>
        <Tag tag={visit.received.tag} />
        <h1>{standing.opened?.title}</h1>
        {open && plan !== null && visit.dryingStarted === null && (
          <Button tone="stop" onPress={() => setStopping(true)}>
            ▲ Stop the wash
          </Button>
        )}
      </header>
      <StopPart />
      {visit.end === null && visit.dryingStarted === null && wetAhead && <Blockers />}
      {open && <ShelfGaps />}
      {plan === null ? (
        <Empty>
          <p>No plan is on record for this visit, so there are no steps. Put one on record in the dossier.</p>
        </Empty>
      ) : (
        <>
          {wet !== null && !extracted && plan.bounds.wetMinutes > 0 && (
            <div className="sect wet-minutes">
              <TimerFace
                startedAt={wet}
                minutes={plan.bounds.wetMinutes}
                label="wet minutes left until extracted"
              />
              <WetMinutesPlot />
            </div>
          )}
          {behind.length > 0 && (
            <details className="steps-behind">
              <summary>
                Done: {behind.length} of {steps.length} steps
              </summary>
              <Steps some={behind} present={present} />
            </details>
          )}
          <Steps some={ahead.filter(isAtHand)} present={present} />
          <BathPart plan={plan} step={present} />
          <Steps some={ahead.filter((step) => !isAtHand(step))} present={present} />
          <SpotPart />
          <ResiduePart />
          {wet !== null && <SizePart />}
          {present === undefined && (
            <Notice tone="ok" title="Every step of the plan is done.">
              <Link className="btn wide" href={`/rugs/${rug}?at=dry`}>
                Go on to drying
              </Link>
            </Notice>
          )}
          <p className="why">
            Wet floor: residual-current protection on every machine, shoes that grip, two people to lift.
            Local codes and the supplier’s safety data sheet come first; waste water only as the local
            authority allows.
          </p>
        </>
      )}
      <DifferentialPart />
      <FlowPart />
      {open && <UndoBar />}
      {stopping && <StopSheet step={present} onClose={() => setStopping(false)} />}
    </div>
  );
}
