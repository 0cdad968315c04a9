import {
  type ConditionProblem,
  conditionWord,
  type MarkShape,
  type Measured,
  markAreaCm2,
  markLengthCm,
  type PicturePoint,
  placedOnRug,
  type RugFrame,
  type RugPoint,
  tapeUncertaintyMm,
} from '../../core/condition/index.ts';
import type { Result } from '../../units/index.ts';
import type { Mark, Surface } from './surface.ts';

/** A mark while it is being put down. What is not known yet is null or empty. */
export interface MarkDraft {
  readonly mark: string;
  readonly word: string;
  readonly side: Mark['side'];
  readonly shape: MarkShape;
  readonly pointsMm: readonly RugPoint[];
  /** Standard uncertainty of each point [mm]; empty while the place is not known in millimetres. */
  readonly pointingMm: readonly number[];
  readonly drawn: { readonly photo: string; readonly points: readonly PicturePoint[] } | null;
  readonly grade: number | null;
  /** Sizes a person typed; they come before the computed ones. */
  readonly typedAreaCm2: number | null;
  readonly typedLengthCm: number | null;
  readonly count: number | null;
  readonly activity: Mark['activity'];
  readonly stain: NonNullable<Mark['stain']> | null;
  /** Ids of the colours under it; empty: all of them, or not known. */
  readonly colours: readonly string[];
  readonly cause: string;
  readonly causeConfidence: NonNullable<Mark['causeConfidence']> | null;
  readonly photos: readonly string[];
  readonly clientInitials: string;
  readonly note: string;
}

export const blankDraft = (mark: string, shape: MarkShape, side: Mark['side']): MarkDraft => ({
  mark,
  word: '',
  side,
  shape,
  pointsMm: [],
  pointingMm: [],
  drawn: null,
  grade: null,
  typedAreaCm2: null,
  typedLengthCm: null,
  count: null,
  activity: 'unknown',
  stain: null,
  colours: [],
  cause: '',
  causeConfidence: null,
  photos: [],
  clientInitials: '',
  note: '',
});

/** The draft with what was drawn on a surface; millimetres where the surface knows them. */
export const drawnOn = (
  draft: MarkDraft,
  surface: Surface,
  points: readonly PicturePoint[],
  seenShare: number,
): MarkDraft => ({
  ...draft,
  drawn: surface.photo === null ? null : { photo: surface.photo, points },
  pointsMm: surface.toRug === null ? [] : points.map(surface.toRug),
  pointingMm: surface.toRug === null ? [] : surface.pointingMm(points, seenShare),
});

/** A recorded mark taken up again. */
export const draftOf = (mark: Mark): MarkDraft => ({
  ...blankDraft(mark.mark, mark.shape, mark.side),
  word: mark.word,
  pointsMm: mark.pointsMm,
  drawn: mark.drawn ?? null,
  grade: mark.grade,
  typedAreaCm2: mark.areaCm2 ?? null,
  typedLengthCm: mark.lengthCm ?? null,
  count: mark.count ?? null,
  activity: mark.activity,
  stain: mark.stain ?? null,
  colours: mark.colours ?? [],
  cause: mark.cause ?? '',
  causeConfidence: mark.causeConfidence ?? null,
  photos: mark.photos,
  clientInitials: mark.clientInitials ?? '',
  note: mark.note ?? '',
});

/** Takes a word, with the grade and stain class it usually has where none was chosen yet. */
export const named = (draft: MarkDraft, word: string): MarkDraft => {
  const row = conditionWord(word);
  const before = conditionWord(draft.word);
  const untouched = draft.grade === null || draft.grade === before?.gradeHint;
  return {
    ...draft,
    word,
    grade: untouched ? (row?.gradeHint ?? draft.grade) : draft.grade,
    stain: row?.stain ?? null,
  };
};

export type Extent =
  | { readonly kind: 'none' }
  | { readonly kind: 'area'; readonly cm2: Measured }
  | { readonly kind: 'length'; readonly cm: Measured }
  | { readonly kind: 'refused'; readonly problem: ConditionProblem };

const read = (measured: Result<Measured, ConditionProblem>, told: (value: Measured) => Extent): Extent =>
  measured.ok ? told(measured.value) : { kind: 'refused', problem: measured.problem };

/** The size its place gives it; none while the place is not known in millimetres. */
export function extentOf(draft: MarkDraft, frame: RugFrame | null): Extent {
  if (draft.shape === 'point' || draft.pointsMm.length === 0) return { kind: 'none' };
  const pointing = draft.pointingMm.length > 0 ? draft.pointingMm : tapeUncertaintyMm / 2;
  return draft.shape === 'polygon'
    ? read(markAreaCm2(draft.pointsMm, pointing, frame), (cm2) => ({ kind: 'area', cm2 }))
    : read(markLengthCm(draft.pointsMm, pointing, frame), (cm) => ({ kind: 'length', cm }));
}

/** Why the place cannot be right, or null. */
export function placeProblem(draft: MarkDraft, frame: RugFrame | null): ConditionProblem | null {
  if (frame === null || draft.pointsMm.length === 0) return null;
  const placed = placedOnRug(draft.pointsMm, frame);
  return placed.ok ? null : placed.problem;
}

const rounded = (value: number, digits: number): number => Number(value.toFixed(digits));

/** The fact a finished draft records; null while word or grade are missing. */
export function markFact(draft: MarkDraft, frame: RugFrame | null, foundDuringWork: boolean): Mark | null {
  if (draft.word === '' || draft.grade === null) return null;
  const extent = extentOf(draft, frame);
  const areaCm2 = draft.typedAreaCm2 ?? (extent.kind === 'area' ? rounded(extent.cm2.value, 1) : null);
  const lengthCm = draft.typedLengthCm ?? (extent.kind === 'length' ? rounded(extent.cm.value, 1) : null);
  const { cause, clientInitials, note } = draft;
  return {
    type: 'MarkRecorded',
    mark: draft.mark,
    word: draft.word,
    side: draft.side,
    shape: draft.shape,
    pointsMm: draft.pointsMm.map(({ xMm, yMm }) => ({ xMm: rounded(xMm, 1), yMm: rounded(yMm, 1) })),
    ...(draft.drawn === null ? {} : { drawn: draft.drawn }),
    grade: draft.grade,
    ...(areaCm2 === null ? {} : { areaCm2 }),
    ...(lengthCm === null ? {} : { lengthCm }),
    ...(draft.count === null ? {} : { count: draft.count }),
    activity: draft.activity,
    ...(draft.stain === null ? {} : { stain: draft.stain }),
    ...(draft.colours.length === 0 ? {} : { colours: draft.colours }),
    ...(cause.trim() === '' ? {} : { cause: cause.trim() }),
    ...(cause.trim() === '' || draft.causeConfidence === null
      ? {}
      : { causeConfidence: draft.causeConfidence }),
    photos: draft.photos,
    ...(clientInitials.trim() === '' ? {} : { clientInitials: clientInitials.trim() }),
    ...(note.trim() === '' ? {} : { note: note.trim() }),
    ...(foundDuringWork ? { foundDuringWork: true } : {}),
  };
}
