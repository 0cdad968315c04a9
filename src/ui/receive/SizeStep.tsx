import { rugShapes } from '../../dossier/index.ts';
import { Choice, Notice } from '../kit/index.ts';
import { areaM2 } from './intakeFacts.ts';
import { FringeField, LengthField } from './measureFields.tsx';
import type { RugStepProps } from './stepProps.ts';

const places = ['left', 'middle', 'right'] as const;
const crosswise = ['at the start', 'in the middle', 'at the far end'] as const;
/** Above this share of difference a rug is worth calling out of square. */
const crooked = 0.02;

const spread = (values: readonly (number | null)[]): number => {
  const given = values.flatMap((value) => (value === null ? [] : [value]));
  return given.length < 3 ? 0 : (Math.max(...given) - Math.min(...given)) / Math.max(...given);
};

/** Three lengths and three widths, and the fringe at each end. */
export function SizeStep({ rug, changeRug, settings, faults }: RugStepProps) {
  const { units } = settings;
  const put = (field: 'lengthsMm' | 'widthsMm', at: number) => (value: number | null) =>
    changeRug((before) => ({ [field]: before[field].map((old, index) => (index === at ? value : old)) }));
  const area = areaM2(rug);
  const isCrooked = Math.max(spread(rug.lengthsMm), spread(rug.widthsMm)) > crooked;
  return (
    <div className="form">
      <Choice
        label="Shape"
        columns={3}
        options={rugShapes.map((value) => ({ value, words: value }))}
        value={rug.shape}
        onChange={(shape) => changeRug({ shape })}
      />
      <p className="hint">
        Lay it face up, flat, not stretched, with the pile lying toward you. Measure the woven body, without
        the fringe.
      </p>
      <fieldset className="three">
        <legend className="unseen">Length</legend>
        {places.map((place, index) => (
          <LengthField
            key={place}
            label={`Length, ${place}`}
            units={units}
            value={rug.lengthsMm[index] ?? null}
            onChange={put('lengthsMm', index)}
          />
        ))}
      </fieldset>
      {faults['lengths'] === undefined ? null : <p className="fault">{faults['lengths']}</p>}
      <fieldset className="three">
        <legend className="unseen">Width</legend>
        {crosswise.map((place, index) => (
          <LengthField
            key={place}
            label={`Width, ${place}`}
            units={units}
            value={rug.widthsMm[index] ?? null}
            onChange={put('widthsMm', index)}
          />
        ))}
      </fieldset>
      {faults['widths'] === undefined ? null : <p className="fault">{faults['widths']}</p>}
      <fieldset className="three">
        <legend>Fringe, 0 where there is none</legend>
        <FringeField
          label="Fringe at the start"
          units={units}
          value={rug.fringeStartMm}
          onChange={(fringeStartMm) => changeRug({ fringeStartMm })}
        />
        <FringeField
          label="Fringe at the far end"
          units={units}
          value={rug.fringeEndMm}
          onChange={(fringeEndMm) => changeRug({ fringeEndMm })}
        />
      </fieldset>
      {area === null ? null : (
        <p className="extent">
          <b>
            {area.toFixed(2)} m²{units === 'metric' ? '' : ` (${(area * 10.76391).toFixed(1)} ft²)`}
          </b>
        </p>
      )}
      {isCrooked ? (
        <Notice tone="caution" title="Out of square">
          <p>
            The three measures differ by more than {Math.round(crooked * 100)} %. If that is how it was woven,
            the mark “skew” or “irregular shape” puts it on record.
          </p>
        </Notice>
      ) : null}
    </div>
  );
}
