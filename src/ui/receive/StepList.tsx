import { Button } from '../kit/index.ts';
import { type Intake, type RugIntake, rugSteps, type Step, steps, stepWords } from './intake.ts';
import { faultsOf } from './intakeChecks.ts';
import { rugTitle } from './intakeFacts.ts';
import { thisDay } from './thisDay.ts';

/** All steps, with what is done; any can be opened at any time. */
export function StepList(props: {
  readonly intake: Intake;
  readonly rugAt: number;
  readonly onGo: (step: Step, rugAt: number) => void;
  readonly onStartOver: () => void;
}) {
  const { intake } = props;
  const isFree = (step: Step, rug: RugIntake) =>
    Object.keys(faultsOf(intake, step, rug, thisDay())).length === 0;
  const isComplete = (step: Step, rug: RugIntake): boolean => {
    if (step === 'pictures') return rug.photographs.length > 0;
    if (step === 'rugs') return intake.rugs.every((each) => rugSteps.every((of) => isFree(of, each)));
    return isFree(step, rug);
  };
  const line = (step: Step, rugAt: number) => {
    const rug = intake.rugs[rugAt];
    const isHere =
      intake.step === step && (rugAt === props.rugAt || !(rugSteps as readonly Step[]).includes(step));
    const isDone = rug !== undefined && isComplete(step, rug);
    return (
      <li key={`${step} ${rugAt}`}>
        <button
          type="button"
          className="stepLine"
          aria-current={isHere ? 'step' : undefined}
          onClick={() => props.onGo(step, rugAt)}
        >
          <span aria-hidden="true">{isDone ? '✓' : '○'}</span>
          {stepWords[step]}
          <span className="unseen">{isDone ? ', complete' : ', open'}</span>
        </button>
      </li>
    );
  };
  return (
    <nav aria-label="Steps">
      <ol className="stepList">
        {line('client', 0)}
        {line('visit', 0)}
        {intake.rugs.map((rug, index) => (
          <li key={rug.rug}>
            <span className="stepRug">{rugTitle(rug)}</span>
            <ol className="stepList">{rugSteps.map((step) => line(step, index))}</ol>
          </li>
        ))}
        {steps.filter((step) => step === 'rugs' || step === 'sign').map((step) => line(step, 0))}
      </ol>
      <div className="actions">
        <Button tone="ghost" onPress={props.onStartOver}>
          Start over
        </Button>
      </div>
    </nav>
  );
}
