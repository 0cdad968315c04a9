import { type PointerEvent, useRef, useState } from 'react';
import type { CardReading } from '../../core/card/index.ts';
import type { Area, BlotPlaces, CardBlot, Outline } from '../../core/colour/index.ts';
import { useUnit } from '../condition/useUnit.ts';
import { Button, Choice } from '../kit/index.ts';
import { moved, movedTo, type PlaceName, scaled, windowView } from './places.ts';
import type { ShownPicture } from './useColourWorker.ts';

/** A place smaller than this [px] is refused. */
const leastPx = 12;

const names: { readonly [P in PlaceName]: string } = { control: 'Clean cloth', sample: 'Blot' };

const path = (outline: Outline): string => `M${outline.map(([x, y]) => `${x} ${y}`).join('L')}Z`;
const outlineOf = ({ x, y, width, height }: Area): Outline => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
];

/** The card's window with the measured places drawn on it; dragged or moved by buttons once a person takes over. */
export function BlotStage(props: {
  readonly picture: ShownPicture;
  readonly card: CardReading;
  readonly found: CardBlot | null;
  /** As a person set them; null while they were found. */
  readonly places: BlotPlaces | null;
  readonly onPlaces: (places: BlotPlaces) => void;
}) {
  const { picture, card, found, places, onPlaces } = props;
  const drawing = useRef<SVGSVGElement>(null);
  const [chosen, setChosen] = useState<PlaceName>('sample');
  const [held, setHeld] = useState<PlaceName | null>(null);
  const view = windowView(card, picture);
  const unit = useUnit(drawing, view);
  const drawn: readonly (readonly [PlaceName, Outline])[] =
    places === null
      ? [
          ...(found?.places.controls ?? []).map((control) => ['control', control] as const),
          ...(found === null ? [] : [['sample', found.places.sample] as const]),
        ]
      : (['control', 'sample'] as const).map((name) => [name, outlineOf(places[name])] as const);
  const change = (name: PlaceName, to: (area: Area) => Area) => {
    if (places !== null) onPlaces({ ...places, [name]: to(places[name]) });
  };
  const at = (event: PointerEvent<SVGSVGElement>) =>
    new DOMPoint(event.clientX, event.clientY).matrixTransform(drawing.current?.getScreenCTM()?.inverse());
  const follow = (name: PlaceName, event: PointerEvent<SVGSVGElement>) => {
    const { x, y } = at(event);
    change(name, (area) => movedTo(area, x, y));
  };
  return (
    <div className="blotStage">
      <svg
        ref={drawing}
        viewBox={`${view.x} ${view.y} ${view.width} ${view.height}`}
        role="img"
        aria-label={
          drawn.length === 0
            ? 'The card’s window in the photograph.'
            : 'The card’s window in the photograph, with clean cloth outlined in blue dashes and the blot in a red line.'
        }
        className={places === null ? '' : 'moving'}
        onPointerDown={(event) => {
          if (places === null) return;
          const { x, y } = at(event);
          const near = (name: PlaceName) =>
            Math.hypot(
              x - places[name].x - places[name].width / 2,
              y - places[name].y - places[name].height / 2,
            );
          const name = near('control') < near('sample') ? 'control' : 'sample';
          setChosen(name);
          setHeld(name);
          event.currentTarget.setPointerCapture(event.pointerId);
          follow(name, event);
        }}
        onPointerMove={(event) => {
          if (held !== null) follow(held, event);
        }}
        onPointerUp={() => setHeld(null)}
        onPointerCancel={() => setHeld(null)}
      >
        <image href={picture.url} width={picture.widthPx} height={picture.heightPx} />
        {drawn.map(([name, outline]) => (
          <g key={`${name}${path(outline)}`} className={`place ${name}`}>
            <path className="under" d={path(outline)} />
            <path className="over" d={path(outline)} />
            <text x={outline[0]?.[0]} y={(outline[0]?.[1] ?? 0) - 5 * unit} fontSize={15 * unit}>
              {names[name]}
            </text>
          </g>
        ))}
      </svg>
      {places !== null && (
        <>
          <Choice
            label="Which place to move"
            columns={2}
            options={[
              { value: 'sample', words: 'Blot' },
              { value: 'control', words: 'Clean cloth' },
            ]}
            value={chosen}
            onChange={setChosen}
          />
          <div className="stageTools" role="toolbar" aria-label={`Move: ${names[chosen]}`}>
            <Button tone="ghost" label="Left" onPress={() => change(chosen, (area) => moved(area, -0.25, 0))}>
              ←
            </Button>
            <Button tone="ghost" label="Right" onPress={() => change(chosen, (area) => moved(area, 0.25, 0))}>
              →
            </Button>
            <Button tone="ghost" label="Up" onPress={() => change(chosen, (area) => moved(area, 0, -0.25))}>
              ↑
            </Button>
            <Button tone="ghost" label="Down" onPress={() => change(chosen, (area) => moved(area, 0, 0.25))}>
              ↓
            </Button>
            <Button
              tone="ghost"
              label="Larger"
              onPress={() => change(chosen, (area) => scaled(area, 1.25, leastPx))}
            >
              +
            </Button>
            <Button
              tone="ghost"
              label="Smaller"
              onPress={() => change(chosen, (area) => scaled(area, 0.8, leastPx))}
            >
              −
            </Button>
          </div>
        </>
      )}
    </div>
  );
}
