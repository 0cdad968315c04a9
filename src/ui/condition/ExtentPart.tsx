import { type Measured, type RugFrame, shareOfRug } from '../../core/condition/index.ts';
import { NumberField, ProblemNotice } from '../kit/index.ts';
import { extentOf, type MarkDraft } from './markDraft.ts';

const figure = (value: number): string =>
  value >= 100 ? value.toFixed(0) : value >= 10 ? value.toFixed(1).replace(/\.0$/, '') : value.toFixed(1);

const spanText = ({ value, least, most }: Measured, unit: string): string =>
  `${figure(value)} ${unit} (between ${figure(least)} and ${figure(most)})`;

/** The size of a mark: computed from its place where that is known, or typed. */
export function ExtentPart(props: {
  readonly draft: MarkDraft;
  readonly frame: RugFrame | null;
  readonly onChange: (draft: MarkDraft) => void;
}) {
  const { draft, frame, onChange } = props;
  const extent = extentOf(draft, frame);
  const share = extent.kind === 'area' && frame !== null ? shareOfRug(extent.cm2.value, frame) * 100 : null;
  return (
    <div className="form">
      {extent.kind === 'refused' ? <ProblemNotice problem={extent.problem} /> : null}
      {extent.kind === 'area' ? (
        <p className="extent">
          <b>{spanText(extent.cm2, 'cm²')}</b>
          <span className="why">
            from where it was drawn
            {share === null ? '' : `; ${share < 0.1 ? 'under 0.1' : share.toFixed(1)} % of the rug`}
          </span>
        </p>
      ) : null}
      {extent.kind === 'length' ? (
        <p className="extent">
          <b>{spanText(extent.cm, 'cm')}</b>
          <span className="why">from where it was drawn</span>
        </p>
      ) : null}
      {draft.shape === 'line' ? (
        <NumberField
          label={extent.kind === 'length' ? 'Length by tape, if you measured it' : 'Length'}
          unit="cm"
          least={0}
          most={10_000}
          value={draft.typedLengthCm}
          onChange={(typedLengthCm) => onChange({ ...draft, typedLengthCm })}
        />
      ) : (
        <NumberField
          label={extent.kind === 'area' ? 'Area by tape, if you measured it' : 'Area, if you measured it'}
          unit="cm²"
          least={0}
          most={1_000_000}
          value={draft.typedAreaCm2}
          onChange={(typedAreaCm2) => onChange({ ...draft, typedAreaCm2 })}
        />
      )}
      {draft.shape === 'point' ? (
        <NumberField
          label="How many like this"
          unit=""
          step={1}
          least={0}
          most={1_000_000}
          value={draft.count}
          onChange={(count) => onChange({ ...draft, count: count === null ? null : Math.round(count) })}
        />
      ) : null}
    </div>
  );
}
