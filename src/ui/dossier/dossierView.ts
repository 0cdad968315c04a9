import { createContext, useContext } from 'react';
import type { PlanProblem, RequiredDyeTest, WashPlan } from '../../core/wash/index.ts';
import type {
  Asked,
  NextStep,
  RugEntry,
  RugFact,
  RugStanding,
  SizeNotMeasured,
  VisitStanding,
  WetBlocker,
  WorkshopSettings,
} from '../../dossier/index.ts';
import type { Result } from '../../units/index.ts';
import type { ClientSummary } from '../call/index.ts';
import type { Ask } from './ask.ts';

/** What every section of the dossier page reads. */
export interface DossierView {
  readonly rug: string;
  readonly entries: readonly RugEntry[];
  readonly standing: RugStanding;
  /** The latest visit, ended or not. */
  readonly visit: VisitStanding | null;
  /** Whether that visit is still under way, so that its work may go on. */
  readonly open: boolean;
  /** Whether the rug is in the workshop's care, its work declined or not. */
  readonly isHere: boolean;
  readonly client: ClientSummary | null;
  readonly settings: WorkshopSettings;
  /** The plan the record supports now. */
  readonly plan: Result<WashPlan, PlanProblem | SizeNotMeasured>;
  /** Everything that stands between this rug and water now. */
  readonly wetBlockers: readonly WetBlocker[];
  readonly next: NextStep;
  readonly requiredTests: readonly RequiredDyeTest[];
  readonly missingTests: readonly RequiredDyeTest[];
  readonly isOwner: boolean;
  /** Who asks, now, under which settings: what the rules of the record are tried with before asking the server. */
  readonly asked: Asked;
  /** An instant, renewed every minute. */
  readonly now: string;
  readonly nameOf: (person: string) => string;
  readonly colourName: (id: string) => string;
  /** Opens a sheet over the page. */
  readonly ask: (ask: Ask) => void;
  readonly record: (facts: readonly RugFact[]) => Promise<Result<unknown>>;
}

export const DossierContext = createContext<DossierView | null>(null);

/** The dossier that is open; only used inside `DossierPage`. */
export const useDossier = (): DossierView => {
  const view = useContext(DossierContext);
  if (view === null) throw new Error('useDossier outside DossierPage');
  return view;
};
