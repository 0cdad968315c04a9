export { asBelieved } from './believed.ts';
export { litresPerDayAt } from './dehumidifier.ts';
export type {
  DryAlarm,
  DryAnswer,
  LikelyRug,
  RegainBand,
  RugAnswer,
  RugSpread,
} from './dryAnswer.ts';
export { dryForecast } from './dryForecast.ts';
export type { DryingProblem } from './dryingProblem.ts';
export { fibresReckoned } from './fibresReckoned.ts';
export { guessLogger, type LoggerGuess } from './guessLogger.ts';
export * from './learnDrying.ts';
export { type Separator, separators } from './loggerTable.ts';
export { type OffsetAt, type TimeForm, timeForms } from './loggerTime.ts';
export { type NextKind, type NextReading, type Telling, tellings } from './nextReading.ts';
export * from './readLogger.ts';
export { type Binding, bindings, type RoomHour } from './roomHours.ts';
export type { JudgedReading } from './rugBelief.ts';
export type { Evidence, RugEvidence } from './rugEvidence.ts';
export * from './scenario.ts';
export { readingKind } from './scenarioProblem.ts';
export { normal, type Random, seededRandom } from './seededRandom.ts';
export type { RugHour } from './surfaceCourse.ts';
export { type AirFilm, airFilm, balanceFace, type Face, newFace } from './surfaceFlux.ts';
export { wallsByVolume, warmthReckoned } from './warmthReckoned.ts';
