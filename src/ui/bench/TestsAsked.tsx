import type { RequiredDyeTest } from '../../core/wash/index.ts';
import { Button, Notice } from '../kit/index.ts';
import { showsColourChange, type TypedTest } from './typedFacts.ts';

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
                {test.atUrinePlace ? ', at the marked place' : ''}
              </b>
              <span className="why">
                {[conditionWords(test), test.because].filter((words) => words !== '').join(' · ')}
              </span>
            </div>
            {isTyped(test, waiting) ? (
              <span className="why">typed; waits to be read</span>
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

/** Whether the test is typed already and only waits to be read. */
const isTyped = (test: RequiredDyeTest, typed: readonly TypedTest[]): boolean =>
  typed.some(
    (one) =>
      one.colour === test.colour &&
      one.side === test.side &&
      one.liquid === test.liquid &&
      (one.atUrinePlace ?? false) === test.atUrinePlace &&
      (one.grade === null || (showsColourChange(one.liquid) && one.colourChange === null)),
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
