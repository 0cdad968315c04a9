export { MarkedPicture } from './MarkedPicture.tsx';
export { MarkList, markLine } from './MarkList.tsx';
export { MarkPad } from './MarkPad.tsx';
export { type Signature, SignaturePad } from './SignaturePad.tsx';
export { blankSurvey, type SurveyDraft, SurveyFields, surveyFact } from './SurveyFields.tsx';
export { marksAndPictures, picturesOf } from './standingMarks.ts';
export { type Mark, type PadPicture, pointsOn, type Surface, surfacesOf } from './surface.ts';
