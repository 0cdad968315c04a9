import type { Grade } from '../../core/wash/index.ts';

interface Lab {
  readonly L: number;
  readonly a: number;
  readonly b: number;
}

/** What became of one colour, as measured and as kept. */
export interface ColourTold {
  readonly name: string;
  readonly before: Lab;
  readonly after: Lab;
  readonly deltaEF: number;
  readonly grade: Grade;
  readonly gradeInterval: { readonly lowest: Grade; readonly highest: Grade };
  readonly hueTurnDeg: number;
  readonly hueMoved: boolean;
}

const figure = (value: number): string => value.toFixed(1);
const labWords = ({ L, a, b }: Lab): string => `L* ${figure(L)}, a* ${figure(a)}, b* ${figure(b)}`;
const signed = (value: number): string => `${value > 0 ? '+' : ''}${figure(value)}`;

/** Each colour before and after, its difference, grade and interval; a moved hue is flagged. */
export function ColourTable({ rows }: { readonly rows: readonly ColourTold[] }) {
  return (
    <ul className="colourRows">
      {rows.map(({ name, before, after, deltaEF, grade, gradeInterval, hueTurnDeg, hueMoved }) => (
        <li key={name}>
          <span className="swatchPair" aria-hidden="true">
            {[before, after].map(({ L, a, b }, index) => (
              <span key={index === 0 ? 'before' : 'after'} style={{ background: `lab(${L} ${a} ${b})` }} />
            ))}
          </span>
          <div>
            <b>{name}</b>: grade {grade}
            {gradeInterval.lowest === gradeInterval.highest
              ? ''
              : ` (95 %: ${gradeInterval.lowest} to ${gradeInterval.highest})`}
            , ΔE_F {figure(deltaEF)}, lightness {signed(after.L - before.L)}
            <div className="why">
              {labWords(before)} → {labWords(after)}
            </div>
            {hueMoved && (
              <p className="open-fact">
                ▲ Its hue moved by {figure(Math.abs(hueTurnDeg))}°: dye, not soil. Look at it beside the
                intake picture and tell the client.
              </p>
            )}
          </div>
        </li>
      ))}
    </ul>
  );
}
