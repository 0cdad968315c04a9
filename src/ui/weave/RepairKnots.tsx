import { useState } from 'react';
import { type KnotDensity, repairKnots, threeFigures } from '../../core/weave/index.ts';
import { NumberField, Picker } from '../kit/index.ts';

/** A mark of the rug whose area is known. */
export interface RepairPlace {
  readonly mark: string;
  readonly words: string;
  readonly areaCm2: number;
}

/** Knots and hours to reknot an area, taken from a mark or typed. */
export function RepairKnots(props: {
  readonly density: KnotDensity;
  readonly places: readonly RepairPlace[];
}) {
  const { density, places } = props;
  const [mark, setMark] = useState('');
  const [typed, setTyped] = useState<number | null>(null);
  const marked = places.find((place) => place.mark === mark);
  const areaCm2 = marked?.areaCm2 ?? typed;
  const repair = areaCm2 === null ? null : repairKnots(areaCm2, density);
  return (
    <>
      {places.length === 0 ? null : (
        <Picker
          label="Area to reknot"
          any="Measured by hand"
          options={places.map((place) => ({
            value: place.mark,
            words: `${place.words}, ${threeFigures(place.areaCm2)} cm²`,
          }))}
          value={mark}
          onChange={setMark}
        />
      )}
      {marked === undefined ? (
        <NumberField
          label="Area without pile"
          unit="cm²"
          least={0.1}
          most={100_000}
          value={typed}
          onChange={setTyped}
        />
      ) : null}
      {repair === null ? null : (
        <p role="status">
          About <b>{threeFigures(repair.knots)} knots</b>, {threeFigures(repair.leastHours)} to{' '}
          {threeFigures(repair.mostHours)} hours with the foundation, from an easy to a hard place.
        </p>
      )}
      <p className="why">
        Reckoned with 60 to 150 knots an hour, common practice without a published source. It is no quotation.
      </p>
    </>
  );
}
