import type { WashPlan } from '../core/wash/index.ts';
import type { NotedClaim, RugStanding, VisitStanding } from '../dossier/index.ts';
import type { PaperContext } from './paperContext.ts';
import { isolated } from './parts.ts';

export const dataErased = 'client’s data erased';

/** Number of a dossier as it is written on tags and papers. */
export const dossierNumber = (rug: RugStanding): string =>
  rug.opened === null ? 'without number' : String(rug.opened.number).padStart(4, '0');

/** `2` for the second stay in the workshop. */
export const visitNumber = ({ rug, visit }: Pick<PaperContext, 'rug' | 'visit'>): number =>
  rug.visits.findIndex((other) => other.received.visit === visit.received.visit) + 1;

export const titleWords = (rug: RugStanding): string => isolated(rug.opened?.title ?? 'rug');

export const rugWords = ({ rug, visit }: Pick<PaperContext, 'rug' | 'visit'>): string =>
  `Dossier ${dossierNumber(rug)} · tag ${visit.received.tag} · ${titleWords(rug)}`;

export const personWords = ({ workshop }: Pick<PaperContext, 'workshop'>, id: string): string =>
  isolated(workshop.people[id]?.name ?? id);

export const clientName = ({ client }: Pick<PaperContext, 'client'>): string =>
  client === null ? 'not named on this paper' : client.kind === 'erased' ? dataErased : isolated(client.name);

/** The latest claim about something; earlier ones stay in the history. */
export const claimAbout = <About extends NotedClaim['about']>(
  rug: RugStanding,
  about: About,
): (NotedClaim & { readonly about: About }) | undefined =>
  rug.claims.findLast((claim): claim is NotedClaim & { readonly about: About } => claim.about === about);

/** Whether something noted belongs to the visit: after it began and before the next one did. */
export const duringVisit = ({ rug, visit }: Pick<PaperContext, 'rug' | 'visit'>) => {
  const next = rug.visits[visitNumber({ rug, visit })];
  return ({ when }: { readonly when: string }): boolean =>
    when >= visit.received.when && (next === undefined || when < next.received.when);
};

/** The plan that was put on record in a visit, whole. */
export const agreedPlanOf = (visit: VisitStanding): WashPlan | null =>
  visit.plan === null ? null : (visit.plan.plan as unknown as WashPlan);
