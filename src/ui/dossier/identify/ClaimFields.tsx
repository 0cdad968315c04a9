import { constructions, fibres, latexStates } from '../../../core/wash/index.ts';
import { Choice, ManyChoice, NumberField, PassageField } from '../../kit/index.ts';
import { figure } from '../figures.ts';
import { type ClaimDraft, type Knot, knots, sumOf } from './claimDraft.ts';
import { type About, abouts } from './claimWords.ts';

const knotHints: { readonly [K in Knot]?: string } = {
  symmetrical: 'both ends between the two warps',
  asymmetrical: 'one end between, one beside',
  offset: 'rows shifted by one warp',
  jufti: 'over four warps',
};

const tiles = <Word extends string>(words: readonly Word[], hints: { readonly [W in Word]?: string } = {}) =>
  words.map((value) => {
    const hint = hints[value];
    return hint === undefined ? { value, words: value } : { value, words: value, hint };
  });

function BlendFields({
  typed,
  onChange,
}: {
  readonly typed: ClaimDraft;
  readonly onChange: (typed: ClaimDraft) => void;
}) {
  const sum = sumOf(typed) * 100;
  return (
    <>
      <ManyChoice
        label="Fibres of the pile"
        options={tiles(fibres)}
        columns={3}
        value={typed.blend}
        onChange={(blend) => onChange({ ...typed, blend })}
      />
      {typed.blend.length > 1 &&
        typed.blend.map((fibre) => (
          <NumberField
            key={fibre}
            label={`Share of ${fibre}`}
            unit="%"
            least={0}
            most={100}
            value={typed.percent[fibre] ?? null}
            onChange={(value) => onChange({ ...typed, percent: { ...typed.percent, [fibre]: value } })}
          />
        ))}
      {typed.blend.length > 1 && (
        <p className="why" role="status">
          {Math.abs(sum - 100) < 0.1 ? 'Adds up to 100 %.' : `Adds up to ${figure(sum)} %; it must be 100 %.`}
        </p>
      )}
    </>
  );
}

/** The fields of the fact in question. */
export function ClaimFields({
  about,
  typed,
  onChange,
}: {
  readonly about: About;
  readonly typed: ClaimDraft;
  readonly onChange: (typed: ClaimDraft) => void;
}) {
  switch (about) {
    case 'construction':
      return (
        <Choice
          label="Construction"
          columns={2}
          options={tiles(constructions)}
          value={typed.construction}
          onChange={(construction) => onChange({ ...typed, construction })}
        />
      );
    case 'pile':
      return <BlendFields typed={typed} onChange={onChange} />;
    case 'warp':
    case 'weft':
    case 'backing':
      return (
        <Choice
          label={`Fibre of the ${about}`}
          columns={3}
          options={tiles(fibres)}
          value={typed.fibre}
          onChange={(fibre) => onChange({ ...typed, fibre })}
        />
      );
    case 'latex':
      return (
        <Choice
          label="Latex on the back"
          columns={3}
          options={tiles(latexStates)}
          value={typed.latex}
          onChange={(latex) => onChange({ ...typed, latex })}
        />
      );
    case 'knot':
      return (
        <Choice
          label="Knot"
          columns={2}
          options={tiles(knots, knotHints)}
          value={typed.knot}
          onChange={(knot) => onChange({ ...typed, knot })}
        />
      );
    case 'period': {
      const isReversed =
        typed.fromYear !== null && typed.untilYear !== null && typed.fromYear > typed.untilYear;
      const field = (key: 'fromYear' | 'untilYear', label: string) => (
        <NumberField
          label={label}
          unit="year"
          least={-3000}
          most={2200}
          step={1}
          value={typed[key]}
          onChange={(year) => onChange({ ...typed, [key]: year })}
          hint="Leave empty when nothing bounds it. Only original knots date a rug, never repairs."
          problem={isReversed ? 'The latest year lies before the earliest. Exchange them.' : null}
        />
      );
      return (
        <>
          {field('fromYear', 'Not before')}
          {field('untilYear', 'Not after')}
        </>
      );
    }
    default:
      return (
        <PassageField
          label={abouts[about].name}
          value={typed.words}
          onChange={(words) => onChange({ ...typed, words })}
        />
      );
  }
}
