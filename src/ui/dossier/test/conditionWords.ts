import { figure, minutesWords } from '../figures.ts';

/** A required test's conditions in a line. */
export const conditionWords = (test: {
  readonly agents?: readonly string[] | undefined;
  readonly strengthGPerL?: number | undefined;
  readonly pH?: number | undefined;
  readonly temperatureC?: number | undefined;
  readonly minutes?: number | undefined;
}): string =>
  [
    test.agents?.join(' + '),
    test.strengthGPerL === undefined ? undefined : `${figure(test.strengthGPerL)} g/L`,
    test.pH === undefined ? undefined : `pH ${figure(test.pH)}`,
    test.temperatureC === undefined ? undefined : `${figure(test.temperatureC)} °C`,
    test.minutes === undefined ? undefined : minutesWords(test.minutes),
  ]
    .filter((part) => part !== undefined && part !== '')
    .join(', ');
