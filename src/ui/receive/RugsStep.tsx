import { counted } from '../dossier/figures.ts';
import { Button, newId } from '../kit/index.ts';
import { blankRug, rugSteps, stepWords } from './intake.ts';
import { faultsOf } from './intakeChecks.ts';
import { rugTitle } from './intakeFacts.ts';
import type { StepProps } from './stepProps.ts';
import { thisDay } from './thisDay.ts';

/** All rugs of this receipt; another one, or on to sign. */
export function RugsStep({ intake, change }: StepProps) {
  const add = () =>
    change({
      rugs: [...intake.rugs, blankRug(newId(), newId())],
      rugAt: intake.rugs.length,
      step: 'rug',
      signature: null,
    });
  return (
    <div className="form">
      <ul className="rows">
        {intake.rugs.map((rug, index) => {
          const open = rugSteps.filter(
            (step) => Object.keys(faultsOf(intake, step, rug, thisDay())).length > 0,
          );
          return (
            <li key={rug.rug} className="row plain">
              <div>
                <div className="do">
                  {rug.tag.trim() === '' ? null : <span className="tag">{rug.tag.trim()}</span>}
                  {rugTitle(rug)}
                </div>
                <div className="sub">
                  {counted(rug.photographs.length, 'picture')} · {counted(rug.marks.length, 'mark')}
                  {open.length === 0
                    ? ''
                    : ` · still open: ${open.map((step) => stepWords[step]).join(', ')}`}
                </div>
              </div>
              <div className="actions">
                <Button
                  tone="ghost"
                  label={`${open.length === 0 ? 'Change' : 'Go on with'} ${rugTitle(rug)}`}
                  onPress={() => change({ rugAt: index, step: open[0] ?? 'rug' })}
                >
                  {open.length === 0 ? 'Change' : 'Go on'}
                </Button>
                {intake.rugs.length > 1 ? (
                  <Button
                    tone="stop"
                    label={`Leave out ${rugTitle(rug)}`}
                    onPress={() =>
                      change({
                        rugs: intake.rugs.filter((other) => other !== rug),
                        rugAt: 0,
                        signature: null,
                      })
                    }
                  >
                    Leave out
                  </Button>
                ) : null}
              </div>
            </li>
          );
        })}
      </ul>
      <Button tone="ghost" onPress={add}>
        One more rug from this client
      </Button>
    </div>
  );
}
