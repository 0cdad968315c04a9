import { useMemo, useState } from 'react';
import { Link } from 'wouter';
import { type PlanStep, usualAmounts } from '../../core/wash/index.ts';
import { decide, type RugFactOf, type StepStanding, stepId } from '../../dossier/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { figure, stainWords } from '../dossier/figures.ts';
import { sourceWords } from '../dossier/limitWords.ts';
import { aimWords, amountWords } from '../dossier/plan/StepList.tsx';
import { useForm } from '../dossier/useForm.ts';
import { Button, ProblemNotice, TimerFace, useNow, When } from '../kit/index.ts';
import { AgentCautions } from './AgentCautions.tsx';
import { BathSheet } from './BathSheet.tsx';
import { EarlySheet } from './EarlySheet.tsx';
import { FinishSheet } from './FinishSheet.tsx';
import { HandsPart } from './HandsPart.tsx';
import { MixPart, useMix } from './MixPart.tsx';
import { RinseSheet } from './RinseSheet.tsx';
import { doneAsMixed, takenAsMixed, takenWords } from './takenAsMixed.ts';

interface StepCardProps {
  readonly step: PlanStep;
  readonly steps: readonly PlanStep[];
  readonly known: StepStanding | undefined;
  readonly isPresent: boolean;
}

const isRinse = ({ kind }: PlanStep) => kind === 'rinse';
const isMeasured = (step: PlanStep) => step.wet && step.kind !== 'extract';

function Amounts({ step }: { readonly step: PlanStep }) {
  const mix = useMix(step);
  const amounts = mix === null ? step.amounts : usualAmounts(step, mix);
  if (amounts.length === 0) return null;
  return (
    <div className="amounts">
      {amounts.map((amount) => (
        <div className="amt" key={amount.agent}>
          {amountWords(amount)} <small>{amount.agent}</small>
        </div>
      ))}
      <p className="why">
        {[...new Set(amounts.map(({ source }) => sourceWords(source)))].join('; ')}; measure the bath before
        use
      </p>
    </div>
  );
}

/** Before a step: whoever helps says so where one person is not enough. */
function StartPart({ step }: { readonly step: PlanStep }) {
  const { standing, asked } = useDossier();
  const { act, isBusy, problem } = useForm(`start/${stepId(step)}`);
  const fact = useMemo(
    (): RugFactOf<'StepStarted'> => ({ type: 'StepStarted', step: stepId(step), wets: step.wet }),
    [step],
  );
  const may = useMemo(() => decide(standing, fact, asked), [standing, fact, asked]);
  // What stands above already is not said twice.
  const held = may.ok || may.problem.code === 'wash-not-allowed' ? null : may.problem;
  return (
    <>
      {step.people > 1 && <HandsPart step={step} />}
      <ProblemNotice problem={problem ?? held} />
      <Button wide isDisabled={isBusy || !may.ok} onPress={() => act(fact)}>
        Start: {step.kind}
      </Button>
      {!may.ok && held === null && <p className="why">Not yet; the reasons stand above.</p>}
    </>
  );
}

interface RunningProps {
  readonly step: PlanStep;
  readonly startedAt: string;
  readonly next: PlanStep | undefined;
}

function RunningPart({ step, startedAt, next }: RunningProps) {
  const { ask } = useDossier();
  const now = useNow();
  const isDwelling =
    step.dwellMinutes !== undefined && now < Date.parse(startedAt) + step.dwellMinutes * 60_000;
  const [sheet, setSheet] = useState<'reading' | 'finish' | 'early' | null>(null);
  const { act, isBusy, problem } = useForm(`running/${stepId(step)}`);
  const taken = takenAsMixed(useMix(step));
  const then = next === undefined ? '' : `, ${next.kind} next`;
  return (
    <>
      <ProblemNotice problem={problem} />
      <Button
        wide
        tone={isDwelling ? 'ghost' : 'act'}
        isDisabled={isBusy}
        onPress={() => (isDwelling ? setSheet('early') : act(doneAsMixed(step, taken)))}
      >
        Done{isDwelling ? ', before the dwell is over' : `${takenWords(taken)}${then}`}
      </Button>
      {isMeasured(step) && (
        <Button tone="ghost" wide onPress={() => setSheet('reading')}>
          Write a reading
        </Button>
      )}
      {step.kind === 'dusting' && (
        <Button tone="ghost" wide onPress={() => ask({ kind: 'dust' })}>
          Log a dusting pass
        </Button>
      )}
      {!isDwelling && (
        <Button tone="ghost" wide onPress={() => setSheet('finish')}>
          {taken.length === 0 ? 'Done, with amounts, lot or note' : 'Done, but it took another amount'}
        </Button>
      )}
      {sheet === 'early' && <EarlySheet step={step} taken={taken} onClose={() => setSheet(null)} />}
      {sheet === 'finish' && <FinishSheet step={step} onClose={() => setSheet(null)} />}
      {sheet === 'reading' &&
        (isRinse(step) ? (
          <RinseSheet step={step} onClose={() => setSheet(null)} />
        ) : (
          <BathSheet step={step} onClose={() => setSheet(null)} />
        ))}
    </>
  );
}

/** One step: large while it is at hand, one line once it is done. */
export function StepCard({ step, steps, known, isPresent }: StepCardProps) {
  const { rug, standing, settings, open, nameOf } = useDossier();
  const started = known?.started ?? null;
  const done = known?.done ?? null;
  const title = `${step.kind}${step.stain === undefined ? '' : `: ${stainWords(standing.marks, step.stain)}`}`;
  if (done !== null)
    return (
      <li className="step-done">
        <span aria-hidden="true">✓ </span>
        {title}
        <span className="why">
          done <When at={done.when} />, {nameOf(done.by)}
        </span>
      </li>
    );
  const isAtHand = isPresent || started !== null;
  const next = steps[steps.indexOf(step) + 1];
  const body = (
    <>
      <p>{step.what}</p>
      <Amounts step={step} />
      <MixPart step={step} />
      <p className="aim">{aimWords(step, settings.units)}</p>
      {step.tools.length > 0 && <p className="why">Tools: {step.tools.join(', ')}</p>}
    </>
  );
  if (!isAtHand)
    return (
      <li className="step-later">
        <details>
          <summary>
            {step.order}. {title}
          </summary>
          {body}
          <AgentCautions step={step} />
        </details>
      </li>
    );
  return (
    <li className="sect next step-now">
      <div className="stepno">
        Step {step.order} of {steps.length}
        {started !== null && (
          <>
            , started <When at={started.when} /> by {nameOf(started.by)}
            {started.helpers === undefined ? '' : ` with ${started.helpers}`}
          </>
        )}
      </div>
      <h2>{title}</h2>
      {body}
      {started !== null && step.dwellMinutes !== undefined && (
        <TimerFace
          startedAt={started.when}
          minutes={step.dwellMinutes}
          label={`dwell, ${figure(step.dwellMinutes)} min`}
        />
      )}
      {started === null && <AgentCautions step={step} />}
      {open && (
        <div className="step-buttons">
          {step.kind === 'dry' ? (
            <Link className="btn wide" href={`/rugs/${rug}?at=dry`}>
              Go on to drying
            </Link>
          ) : started === null ? (
            <StartPart step={step} />
          ) : (
            <RunningPart step={step} startedAt={started.when} next={next} />
          )}
        </div>
      )}
      {started !== null && <AgentCautions step={step} />}
    </li>
  );
}
