import { type SizeChange, sizeChanges } from '../../core/condition/index.ts';
import type { RugStanding } from '../../dossier/index.ts';
import { Notice } from '../kit/index.ts';
import { LengthField } from '../receive/measureFields.tsx';
import { type InspectionDraft, measuredAfter } from './inspection.ts';

const places = ['left', 'middle', 'right'] as const;
const crosswise = ['at the start', 'in the middle', 'at the far end'] as const;
const cm = (mm: number) => (mm / 10).toFixed(1);
const verdicts = {
  'no change to be seen': '✓ within measuring',
  smaller: '▼ smaller',
  larger: '▲ larger',
} as const;

/** Three lengths and three widths again, beside those at the door. */
export function SizeAfter(props: {
  readonly draft: InspectionDraft;
  readonly standing: RugStanding;
  readonly units: 'metric' | 'customary';
  readonly onChange: (draft: InspectionDraft) => void;
}) {
  const { draft, standing, units } = props;
  const before = standing.measurements.findLast(({ occasion }) => occasion === 'intake');
  if (before === undefined)
    return (
      <Notice tone="caution" title="It was not measured at intake.">
        <p>There is nothing to compare with.</p>
      </Notice>
    );
  const put = (field: 'lengthsMm' | 'widthsMm', at: number) => (value: number | null) =>
    props.onChange({ ...draft, [field]: draft[field].map((old, index) => (index === at ? value : old)) });
  const after = measuredAfter(draft, standing);
  const changes = after === null ? null : sizeChanges(before, after);
  const hint = (mm: number | undefined) => (mm === undefined ? undefined : `${cm(mm)} cm at intake`);
  return (
    <div className="form">
      <p className="hint">Lay it as at intake: face up, flat, not stretched, without the fringe.</p>
      <fieldset className="three">
        <legend className="unseen">Length now</legend>
        {places.map((place, index) => (
          <LengthField
            key={place}
            label={`Length now, ${place}`}
            units={units}
            value={draft.lengthsMm[index] ?? null}
            onChange={put('lengthsMm', index)}
            hint={hint(before.lengthsMm[index])}
          />
        ))}
      </fieldset>
      <fieldset className="three">
        <legend className="unseen">Width now</legend>
        {crosswise.map((place, index) => (
          <LengthField
            key={place}
            label={`Width now, ${place}`}
            units={units}
            value={draft.widthsMm[index] ?? null}
            onChange={put('widthsMm', index)}
            hint={hint(before.widthsMm[index])}
          />
        ))}
      </fieldset>
      {changes === null ? null : (
        <Changes
          rows={[
            ...changes.lengths.map((change, index) => ({ name: `Length, ${places[index] ?? ''}`, change })),
            ...changes.widths.map((change, index) => ({ name: `Width, ${crosswise[index] ?? ''}`, change })),
          ]}
        />
      )}
    </div>
  );
}

function Changes({
  rows,
}: {
  readonly rows: readonly { readonly name: string; readonly change: SizeChange }[];
}) {
  const moved = rows.filter(({ change }) => change.verdict !== 'no change to be seen');
  const doubt = rows[0]?.change.uncertaintyMm ?? 0;
  return (
    <>
      <table className="sizes">
        <thead>
          <tr>
            <th scope="col">Place</th>
            <th scope="col" className="num">
              Intake
            </th>
            <th scope="col" className="num">
              Now
            </th>
            <th scope="col" className="num">
              Change
            </th>
            <th scope="col">So it is</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ name, change }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td className="num">{cm(change.beforeMm)}</td>
              <td className="num">{cm(change.afterMm)}</td>
              <td className="num">
                {change.changeMm > 0 ? '+' : ''}
                {cm(change.changeMm)}
              </td>
              <td className="sizeVerdict">{verdicts[change.verdict]}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="why">
        In centimetres. Each end of a measured length is known to ± 0.5 cm, so a change up to {cm(doubt)} cm
        cannot be told from measuring.
      </p>
      {moved.length > 0 ? (
        <Notice tone="caution" title="The size has changed">
          <p>
            Measure those places once more. If it holds, block it to the intake size, or say in the note why
            it goes home so.
          </p>
        </Notice>
      ) : null}
    </>
  );
}
