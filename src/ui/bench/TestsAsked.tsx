import type { RequiredDyeTest } from '../../core/wash/index.ts';
import { Button, Notice } from '../kit/index.ts';
import type { TypedTest } from './typedFacts.ts';

interface AskedProps {
  readonly tests: readonly RequiredDyeTest[];
  readonly waiting: readonly TypedTest[];
  readonly onTest: (asked: RequiredDyeTest) => void;
}

/** The dye tests that wet work waits for, each with the conditions to make it under. */
export function TestsAsked({ tests, waiting, onTest }: AskedProps) {
  if (tests.length === 0) return null;
  return (
    <Notice tone="stop" title="No wet step yet.">
      <p>{tests.length === 1 ? 'One dye test decides it:' : `${tests.length} dye tests decide it:`}</p>
      <ul className="plain-list">
        {tests.map((test) => (
          <li key={`${test.colour}/${test.side}/${test.liquid}/${test.atUrinePlace}`} className="asked">
            <div>
              <b>
                {test.name}, {test.side}, {test.liquid}
                {test.atUrinePlace ? ', at the urine place' : ''}
              </b>
              <span className="why">
                {[conditionWords(test), test.because].filter((words) => words !== '').join(' · ')}
              </span>
            </div>
            {isTyped(test, waiting) ? (
              <span className="why">waits for its grade</span>
            ) : (
              <Button
                tone="ghost"
                onPress={() => onTest(test)}
                label={`Add the test: ${test.name}, ${test.side}, ${test.liquid}`}
              >
                Add
              </Button>
            )}
          </li>
        ))}
      </ul>
    </Notice>
  );
}

const isTyped = (test: RequiredDyeTest, typed: readonly TypedTest[]): boolean =>
  typed.some(
    ({ colour, side, liquid, grade, atUrinePlace = false }) =>
      grade === null &&
      atUrinePlace === test.atUrinePlace &&
      colour === test.colour &&
      side === test.side &&
      liquid === test.liquid,
  );

const conditionWords = ({ pH, temperatureC, minutes, strengthGPerL }: RequiredDyeTest): string =>
  [
    pH === undefined ? '' : `pH ${pH}`,
    temperatureC === undefined ? '' : `${temperatureC} °C`,
    minutes === undefined ? '' : minutes >= 120 ? `${minutes / 60} h` : `${minutes} min`,
    strengthGPerL === undefined ? '' : `${strengthGPerL} g/L`,
  ]
    .filter((words) => words !== '')
    .join(', ');
