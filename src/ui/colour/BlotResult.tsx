import type { BlotReading, Lab } from '../../core/colour/index.ts';
import { type Grade, grades, rulingGrade } from '../../core/wash/index.ts';
import { blotLabel, blotNoteWords } from '../../text/colourWords.ts';
import { FactList } from '../kit/index.ts';

const figure = (value: number): string => value.toFixed(1);

export const gradeInterval = ([lowest, highest]: BlotReading['gradeInterval']): string =>
  lowest === highest ? lowest : `${lowest} to ${highest}`;

/** The grade a measured reading counts with: the worst with a probability above 5 %. */
export const countsWith = ({ grade, probability }: BlotReading): Grade =>
  rulingGrade({
    colour: '',
    side: 'face',
    liquid: 'planned bath',
    outcome: 'graded',
    grade,
    gradeProbabilities: probability,
  }) ?? grade;

const swatch = ({ L, a, b }: Lab): string => `lab(${L} ${a} ${b})`;

/** Probabilities as bars, best grade first; each with its figure. */
function Chances({ reading }: { readonly reading: BlotReading }) {
  const rules = countsWith(reading);
  return (
    <ul className="chances" aria-label="Probability of each grade">
      {grades
        .toReversed()
        .filter((grade) => (reading.probability[grade] ?? 0) >= 0.005 || grade === rules)
        .map((grade) => {
          const share = reading.probability[grade] ?? 0;
          return (
            <li key={grade} className={grade === rules ? 'rules' : ''}>
              <b>{grade}</b>
              <span className="chance" aria-hidden="true">
                <span style={{ width: `${100 * share}%` }} />
              </span>
              <span>
                {Math.round(100 * share)} %{grade === rules && ', counts'}
              </span>
            </li>
          );
        })}
    </ul>
  );
}

/** A measured grade with how sure it is, and what it was worked out from. */
export function BlotResult({ reading, card }: { readonly reading: BlotReading; readonly card: string }) {
  const rules = countsWith(reading);
  return (
    <div className="blotResult">
      <p className="amt">
        Grade {reading.grade} <small>95 %: {gradeInterval(reading.gradeInterval)}</small>
      </p>
      <p>
        {blotLabel.charAt(0).toUpperCase() + blotLabel.slice(1)}.{' '}
        {rules === reading.grade
          ? 'It counts with this grade.'
          : `It counts as ${rules}: the worst grade with a probability above 5 %.`}
      </p>
      <Chances reading={reading} />
      <FactList
        rows={[
          {
            name: 'Difference',
            value: `ΔE ${figure(reading.deltaE)}, ΔE GS ${figure(reading.deltaEGS)}`,
            why: `noise ${figure(reading.sigma)} on each axis; light corrected with card ${card}`,
          },
        ]}
      />
      <div className="swatches">
        <span className="half" style={{ background: swatch(reading.control) }}>
          <span className="on-light">Clean cloth</span>
        </span>
        <span className="half" style={{ background: swatch(reading.dye) }}>
          <span className="on-light">Blot</span>
        </span>
      </div>
      <ul className="why">
        {reading.notes.map((note) => (
          <li key={note}>{blotNoteWords[note]}</li>
        ))}
      </ul>
    </div>
  );
}
