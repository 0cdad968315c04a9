import type { RugFactOf, RugStanding } from '../../dossier/index.ts';
import { blankSurvey, type SurveyDraft } from '../condition/index.ts';

type Inspected = RugFactOf<'RugInspected'>;
export type Outcome = Inspected['marks'][number]['outcome'];

/** The last look, while it is typed. */
export interface InspectionDraft {
  readonly outcomes: Readonly<Record<string, Outcome>>;
  readonly notes: Readonly<Record<string, string>>;
  readonly lengthsMm: readonly (number | null)[];
  readonly widthsMm: readonly (number | null)[];
  readonly survey: SurveyDraft;
  readonly odour: Inspected['odour'] | null;
  readonly colour: Inspected['colour'] | null;
  readonly note: string;
}

export const blankInspection: InspectionDraft = {
  outcomes: {},
  notes: {},
  lengthsMm: [null, null, null],
  widthsMm: [null, null, null],
  survey: blankSurvey,
  odour: null,
  colour: null,
  note: '',
};

/** Marks put down since the work began are new, unless somebody says otherwise. */
export const outcomeOf = (draft: InspectionDraft, mark: RugStanding['marks'][number]): Outcome | null =>
  draft.outcomes[mark.mark] ?? (mark.foundDuringWork === true ? 'new' : null);

const whole = (values: readonly (number | null)[]): readonly number[] =>
  values.flatMap((value) => (value === null ? [] : [value]));

/** The measurement after the work, once all six sizes are there. */
export function measuredAfter(
  draft: InspectionDraft,
  standing: RugStanding,
): RugFactOf<'RugMeasured'> | null {
  const before = standing.measurements.findLast(({ occasion }) => occasion === 'intake');
  const lengthsMm = whole(draft.lengthsMm);
  const widthsMm = whole(draft.widthsMm);
  if (before === undefined || lengthsMm.length < 3 || widthsMm.length < 3) return null;
  return {
    type: 'RugMeasured',
    occasion: 'after work',
    shape: before.shape,
    lengthsMm,
    widthsMm,
    uncertaintyMm: 5,
  };
}

/** The inspection as it will be recorded; null while a mark or a judgement is missing. */
export function inspectedFact(draft: InspectionDraft, standing: RugStanding): Inspected | null {
  const { odour, colour, note } = draft;
  const marks = standing.marks.flatMap((mark) => {
    const outcome = outcomeOf(draft, mark);
    const words = draft.notes[mark.mark]?.trim() ?? '';
    return outcome === null ? [] : [{ mark: mark.mark, outcome, ...(words === '' ? {} : { note: words }) }];
  });
  if (odour === null || colour === null || marks.length < standing.marks.length) return null;
  return {
    type: 'RugInspected',
    marks,
    odour,
    colour,
    ...(note.trim() === '' ? {} : { note: note.trim() }),
  };
}
