import { useEffect, useRef, useState } from 'react';
import { useSettings } from '../call/index.ts';
import { Button, goToSlip, newId, Sheet, useKept } from '../kit/index.ts';
import { ClientStep } from './ClientStep.tsx';
import {
  blankIntake,
  blankRug,
  type Intake,
  type RugIntake,
  rugSteps,
  type Step,
  steps,
  stepWords,
} from './intake.ts';
import { type Faults, faultsOf } from './intakeChecks.ts';
import { rugTitle } from './intakeFacts.ts';
import { MarksStep } from './MarksStep.tsx';
import { MassStep } from './MassStep.tsx';
import { PicturesStep } from './PicturesStep.tsx';
import { Recorded } from './Recorded.tsx';
import { RugStep } from './RugStep.tsx';
import { RugsStep } from './RugsStep.tsx';
import { SignStep } from './SignStep.tsx';
import { SizeStep } from './SizeStep.tsx';
import { StepList } from './StepList.tsx';
import type { RugStepProps } from './stepProps.ts';
import { TermsStep } from './TermsStep.tsx';
import { thisDay } from './thisDay.ts';
import { VisitStep } from './VisitStep.tsx';
import './receive.css';

const ofRug = (step: Step): boolean => (rugSteps as readonly Step[]).includes(step);

/** Counts up with each change of the shape, so that an older draft is never misread. */
const keptAs = 'receive/2';

/** Parts that may change without what was signed becoming another thing. */
const beside = ['step', 'rugAt', 'signature', 'unsigned', 'sent', 'recorded'];
const unsigns = (part: Partial<Intake>): boolean => Object.keys(part).some((key) => !beside.includes(key));

/** Takes in one or several rugs of a client: one small step after the other, each kept as it is typed. */
export function ReceivePage() {
  const settings = useSettings();
  const [blank] = useState(() => blankIntake(newId));
  const [intake, setIntake, forget] = useKept<Intake>(keptAs, blank);
  const [triedStep, setTried] = useState<string | null>(null);
  const [isListOpen, setListOpen] = useState(false);
  const [isLeaving, setLeaving] = useState(false);
  const heading = useRef<HTMLHeadingElement>(null);
  const { step } = intake;
  const rugAt = Math.min(intake.rugAt, intake.rugs.length - 1);
  const rug = intake.rugs[rugAt] ?? blankRug('', '');
  const here = `${step} ${rugAt} ${intake.recorded === null}`;
  const before = useRef(here);

  useEffect(() => {
    if (before.current === here) return;
    before.current = here;
    heading.current?.focus();
    window.scrollTo(0, 0);
  }, [here]);

  const change = (part: Partial<Intake>) =>
    setIntake((now) => ({ ...now, ...(unsigns(part) ? { signature: null } : {}), ...part }));
  const changeRug: RugStepProps['changeRug'] = (part) =>
    setIntake((now) => {
      const changed = (each: RugIntake): RugIntake => ({
        ...each,
        ...(typeof part === 'function' ? part(each) : part),
      });
      return {
        ...now,
        signature: null,
        rugs: now.rugs.map((each, index) => (index === rugAt ? changed(each) : each)),
      };
    });

  if (intake.recorded !== null)
    return (
      <div className="page narrow">
        <h1 ref={heading} tabIndex={-1}>
          Received
        </h1>
        <Recorded
          intake={intake}
          onNext={() => {
            forget();
            setIntake(blankIntake(newId));
          }}
        />
      </div>
    );

  const faults: Faults = triedStep === here ? faultsOf(intake, step, rug, thisDay()) : {};
  const at = steps.indexOf(step);
  const go = (next: Step, rugNext = rugAt) => {
    setListOpen(false);
    change({ step: next, rugAt: rugNext });
  };
  const onward = () => {
    if (Object.keys(faultsOf(intake, step, rug, thisDay())).length > 0) {
      setTried(here);
      return;
    }
    if (goToSlip()) return;
    go(steps[at + 1] ?? step);
  };
  const isWide = step === 'marks';
  const startOver = () => {
    forget();
    setIntake(blankIntake(newId));
    setLeaving(false);
    setListOpen(false);
  };
  const list = <StepList intake={intake} rugAt={rugAt} onGo={go} onStartOver={() => setLeaving(true)} />;
  return (
    <div className={`page receive${isWide ? ' wide' : ''}`}>
      <aside className="stepsAside">{list}</aside>
      <div className="stepHere">
        <div className="pageTop">
          <div>
            <p className="stepno">
              Receive · step {at + 1} of {steps.length}
              {ofRug(step) && intake.rugs.length > 1 ? ` · rug ${rugAt + 1}: ${rugTitle(rug)}` : ''}
            </p>
            <h1 ref={heading} tabIndex={-1}>
              {stepWords[step]}
            </h1>
          </div>
          <span className="allSteps">
            <Button tone="ghost" onPress={() => setListOpen(true)}>
              All steps
            </Button>
          </span>
        </div>
        <progress
          className="stepBar"
          value={at + 1}
          max={steps.length}
          aria-label={`Step ${at + 1} of ${steps.length}`}
        />
        <OneStep
          key={here}
          intake={intake}
          change={change}
          rug={rug}
          changeRug={changeRug}
          settings={settings}
          faults={faults}
        />
        <div className="actions stepActions">
          {at === 0 ? null : (
            <Button tone="ghost" onPress={() => go(steps[at - 1] ?? step)}>
              Back
            </Button>
          )}
          {step === 'sign' ? null : (
            <Button onPress={onward}>
              {step === 'rugs' ? 'Read back and sign' : step === 'marks' ? 'Done with this rug' : 'Next'}
            </Button>
          )}
          {Object.keys(faults).length > 0 && step !== 'sign' ? (
            <Button tone="ghost" onPress={() => go(steps[at + 1] ?? step)}>
              Leave it open for now
            </Button>
          ) : null}
        </div>
      </div>
      <Sheet title="Steps" isOpen={isListOpen} onClose={() => setListOpen(false)}>
        {list}
      </Sheet>
      <Sheet title="Start over?" isOpen={isLeaving} onClose={() => setLeaving(false)}>
        <p>Everything typed for this receipt goes away. Nothing of it is on record yet.</p>
        <div className="actions">
          <Button tone="stop" onPress={startOver}>
            Throw it away
          </Button>
          <Button tone="ghost" onPress={() => setLeaving(false)}>
            Keep it
          </Button>
        </div>
      </Sheet>
    </div>
  );
}

function OneStep(props: RugStepProps) {
  switch (props.intake.step) {
    case 'client':
      return <ClientStep {...props} />;
    case 'visit':
      return <VisitStep {...props} />;
    case 'rug':
      return <RugStep {...props} />;
    case 'size':
      return <SizeStep {...props} />;
    case 'mass':
      return <MassStep {...props} />;
    case 'terms':
      return <TermsStep {...props} />;
    case 'pictures':
      return <PicturesStep {...props} />;
    case 'marks':
      return <MarksStep {...props} />;
    case 'rugs':
      return <RugsStep {...props} />;
    case 'sign':
      return <SignStep {...props} />;
  }
}
