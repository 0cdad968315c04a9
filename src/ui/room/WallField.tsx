import { wallsByVolume } from '../../core/drying/index.ts';
import { measureWords, type UnitSystem } from '../../units/index.ts';
import { MeasureField } from '../kit/index.ts';

/** What the walls of a room let through; empty, its size stands for it, widely. */
export function WallField(props: {
  readonly volumeM3: number | null;
  readonly units: UnitSystem;
  readonly value: number | null;
  readonly onChange: (wallsWPerK: number | null) => void;
}) {
  const { volumeM3, units, value, onChange } = props;
  return (
    <MeasureField
      label="Walls, floor and roof let through"
      measure="wallLoss"
      units={units}
      least={1}
      most={100_000}
      value={value}
      onChange={onChange}
      hint={
        volumeM3 === null
          ? 'their area × their U-value, added up'
          : `their area × their U-value, added up; empty: by the room’s size ${wallWords(volumeM3, units)}`
      }
    />
  );
}

/** What walls are taken to let through where nobody said it. */
export function wallWords(volumeM3: number, units: UnitSystem): string {
  const { likely, least, most } = wallsByVolume(volumeM3);
  const words = (wattsPerK: number) => measureWords('wallLoss', wattsPerK, units);
  return `about ${words(likely)} (${words(least)} to ${words(most)}, 80 % likely)`;
}
