import { done, type Result } from '../units/index.ts';
import { careSheet } from './careSheet.ts';
import { conditionReport } from './conditionReport.ts';
import { consent } from './consent.ts';
import { dryingLog } from './dryingLog.ts';
import { dyeTestRecord } from './dyeTestRecord.ts';
import { finalInspection } from './finalInspection.ts';
import { identification } from './identification.ts';
import { incidentReport } from './incidentReport.ts';
import { dayOfInstant } from './measureWords.ts';
import type { Paper } from './paper.ts';
import type { PaperContext } from './paperContext.ts';
import { type PaperBody, type PaperKind, paperKinds } from './paperKinds.ts';
import type { PaperHasNoGround } from './paperProblem.ts';
import { receipt } from './receipt.ts';
import { returnPaper } from './returnPaper.ts';
import { dossierNumber, personWords, rugWords, visitNumber } from './visitWords.ts';
import { washLog } from './washLog.ts';
import { wholeDossier } from './wholeDossier.ts';
import { workOrder } from './workOrder.ts';

type Maker = (context: PaperContext) => Result<PaperBody, PaperHasNoGround>;

const always =
  (make: (context: PaperContext) => PaperBody): Maker =>
  (context) =>
    done(make(context));

const makers: { readonly [Kind in PaperKind]: Maker } = {
  receipt: always(receipt),
  'condition-report': always(conditionReport),
  identification: always(identification),
  'dye-test-record': always(dyeTestRecord),
  consent,
  'work-order': workOrder,
  'wash-log': always(washLog),
  'drying-log': always(dryingLog),
  'incident-report': incidentReport,
  'final-inspection': always(finalInspection),
  return: always(returnPaper),
  'care-sheet': always(careSheet),
  'whole-dossier': always(wholeDossier),
};

/** `CR-0217-2`: letters of the kind, dossier, visit; a receipt is numbered by its consignment. */
const paperNumber = (kind: PaperKind, letters: string, context: PaperContext): string =>
  kind === 'receipt'
    ? `${letters}-${context.visit.received.consignment}`
    : `${letters}-${dossierNumber(context.rug)}-${visitNumber(context)}`;

/**
 * Makes one paper of a rug's visit.
 *
 * @param kind - which paper
 * @param context - the standing of rug, client, workshop and consignment, with the instant of issue
 * @returns the paper as data; the same context gives the same paper
 * @refuses paper-has-no-ground - what it would have to say does not stand in the record yet
 * @source none: contents by this project's rules for papers
 */
export function makePaper(kind: PaperKind, context: PaperContext): Result<Paper, PaperHasNoGround> {
  const made = makers[kind](context);
  if (!made.ok) return made;
  const { settings } = context.workshop;
  const known = paperKinds.find(({ code }) => code === kind);
  const several = kind === 'receipt' && context.consignment.length > 1;
  return done({
    title: known?.title ?? kind,
    subtitle: made.value.subtitle,
    size: settings.paper,
    workshop: { name: settings.name, lines: settings.lines },
    number: paperNumber(kind, known?.letters ?? '', context),
    rug: several ? `${context.consignment.length} rugs, listed below` : rugWords(context),
    date: dayOfInstant(context.issuedAt, context.timeZone),
    issuedAt: context.issuedAt,
    person: personWords(context, context.by),
    language: 'en',
    seal: context.rug.seal,
    parts: made.value.parts,
  });
}
