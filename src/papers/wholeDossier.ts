import { stagesOf } from '../dossier/index.ts';
import { careSheet } from './careSheet.ts';
import { conditionReport } from './conditionReport.ts';
import { consent } from './consent.ts';
import { dryingLog } from './dryingLog.ts';
import { dyeTestRecord } from './dyeTestRecord.ts';
import { finalInspection } from './finalInspection.ts';
import { history } from './history.ts';
import { identification } from './identification.ts';
import { incidentReport } from './incidentReport.ts';
import { dayOfInstant } from './measureWords.ts';
import type { PaperPart } from './paper.ts';
import type { PaperContext } from './paperContext.ts';
import { type PaperBody, type PaperKind, paperKinds } from './paperKinds.ts';
import { facts, heading, row, text } from './parts.ts';
import { receipt } from './receipt.ts';
import { returnPaper } from './returnPaper.ts';
import { clientName, dossierNumber, visitNumber } from './visitWords.ts';
import { washLog } from './washLog.ts';
import { workOrder } from './workOrder.ts';
import { wovenBand } from './wovenBand.ts';

/** Makers of the single papers; those that need a ground give none where it is missing. */
const ofVisit: readonly (readonly [PaperKind, (context: PaperContext) => PaperBody | null])[] = [
  ['receipt', receipt],
  ['condition-report', conditionReport],
  ['consent', (context) => grounded(consent(context))],
  ['work-order', (context) => grounded(workOrder(context))],
  ['wash-log', washLog],
  ['drying-log', dryingLog],
  ['incident-report', (context) => grounded(incidentReport(context))],
  ['final-inspection', finalInspection],
  ['return', returnPaper],
];
const ofRug: readonly (readonly [PaperKind, (context: PaperContext) => PaperBody])[] = [
  ['identification', identification],
  ['dye-test-record', dyeTestRecord],
];

const grounded = (
  made: { readonly ok: true; readonly value: PaperBody } | { readonly ok: false },
): PaperBody | null => (made.ok ? made.value : null);

const titleOf = (kind: PaperKind): string => paperKinds.find(({ code }) => code === kind)?.title ?? kind;

/** A paper set into a larger one: its headings one level down. */
const asSection = (title: string, body: PaperBody): readonly PaperPart[] => [
  { kind: 'page-break' },
  heading(1, title),
  text(body.subtitle, 'soft'),
  ...body.parts.map((part) =>
    part.kind === 'heading' ? heading(part.level === 1 ? 2 : 3, part.text) : part,
  ),
];

/** The same rug at another visit. Another client's name and signature are not shown to this one. */
const atVisit = (context: PaperContext, visit: PaperContext['visit']): PaperContext =>
  visit.received.visit === context.visit.received.visit
    ? context
    : {
        ...context,
        visit,
        client: visit.received.client === context.visit.received.client ? context.client : null,
        consignment: [{ rug: context.rug, visit }],
      };

/**
 * All of a rug's dossier as one document: what it is, its tests, every visit with its papers, and the whole
 * history with what was withdrawn.
 *
 * @source none: contents by this project's rules for papers
 */
export function wholeDossier(context: PaperContext): PaperBody {
  const { rug, visit, timeZone } = context;
  const many = rug.visits.length > 1;
  const visits = rug.visits.map((one) => atVisit(context, one));
  return {
    subtitle: 'Everything on record about one rug.',
    parts: [
      wovenBand(stagesOf(rug).map(({ stage, state }) => ({ name: stage, state }))),
      facts(
        row('Dossier', dossierNumber(rug)),
        row('Client of this visit', clientName(context)),
        row(
          'Visits',
          rug.visits
            .map(
              ({ received }) =>
                `${dayOfInstant(received.when, timeZone)}: ${received.scope.join(', ')}, tag ${received.tag}`,
            )
            .join('\n'),
        ),
        row('Place now', visit.end === null ? rug.place : 'gone home'),
        row('Entries', `${context.entries.length}`, 'all of them, withdrawals too, in the last part'),
      ),
      { kind: 'contents' },
      ...ofRug.flatMap(([kind, make]) => asSection(titleOf(kind), make(context))),
      ...visits.flatMap((one) =>
        ofVisit.flatMap(([kind, make]) => {
          const body = make(one);
          const title = many ? `${titleOf(kind)}, visit ${visitNumber(one)}` : titleOf(kind);
          return body === null ? [] : asSection(title, body);
        }),
      ),
      ...asSection('Care sheet', careSheet(context)),
      { kind: 'page-break' },
      heading(1, 'History'),
      ...history(context),
    ],
  };
}
