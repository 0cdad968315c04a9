import type { WorkshopSettings } from '../../dossier/index.ts';
import type { Intake, RugIntake } from './intake.ts';
import type { Faults } from './intakeChecks.ts';

export interface StepProps {
  readonly intake: Intake;
  readonly change: (part: Partial<Intake>) => void;
  /** Shown once the person has tried to go on. */
  readonly faults: Faults;
}

export interface RugStepProps extends StepProps {
  readonly rug: RugIntake;
  readonly changeRug: (part: Partial<RugIntake> | ((rug: RugIntake) => Partial<RugIntake>)) => void;
  readonly settings: WorkshopSettings;
}
