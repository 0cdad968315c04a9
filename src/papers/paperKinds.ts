import type { PaperPart } from './paper.ts';

/** The papers a workshop hands out or keeps, in the order of a visit; codes are permanent. */
export const paperKinds = [
  { code: 'receipt', title: 'Receipt', letters: 'RC' },
  { code: 'condition-report', title: 'Condition report', letters: 'CR' },
  { code: 'identification', title: 'Identification sheet', letters: 'ID' },
  { code: 'dye-test-record', title: 'Dye-test record', letters: 'DT' },
  { code: 'consent', title: 'Agreement to the work', letters: 'CO' },
  { code: 'work-order', title: 'Work order', letters: 'WO' },
  { code: 'wash-log', title: 'Wash log', letters: 'WL' },
  { code: 'drying-log', title: 'Drying log', letters: 'DL' },
  { code: 'incident-report', title: 'Incident report', letters: 'IR' },
  { code: 'final-inspection', title: 'Final inspection', letters: 'FI' },
  { code: 'return', title: 'Return', letters: 'RT' },
  { code: 'care-sheet', title: 'Care sheet', letters: 'CS' },
  { code: 'whole-dossier', title: 'Dossier', letters: 'DO' },
] as const;

export type PaperKind = (typeof paperKinds)[number]['code'];

/** What one maker adds to a paper: all but its head and foot. */
export interface PaperBody {
  readonly subtitle: string;
  readonly parts: readonly PaperPart[];
}
