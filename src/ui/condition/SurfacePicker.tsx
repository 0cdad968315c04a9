import { Button } from '../kit/index.ts';
import type { Surface } from './surface.ts';

/** Chooses what to draw on. */
export function SurfacePicker(props: {
  readonly surfaces: readonly Surface[];
  readonly chosen: string;
  readonly onChoose: (key: string) => void;
}) {
  if (props.surfaces.length < 2) return null;
  return (
    <div className="surfaces" role="toolbar" aria-label="Draw on">
      {props.surfaces.map(({ key, words }) => (
        <Button key={key} tone="ghost" isPressed={key === props.chosen} onPress={() => props.onChoose(key)}>
          {words}
        </Button>
      ))}
    </div>
  );
}
