import { useState } from 'react';
import type { CardReading } from '../../core/card/index.ts';
import type { Area, BlotPlaces, CardBlot, Outline } from '../../core/colour/index.ts';
import { Button } from '../kit/index.ts';
import { PlaceStage, type StagePlace } from './PlaceStage.tsx';
import { middleOf, movedTo, outlineOf, type PlaceName, scaled, windowView } from './places.ts';
import type { ShownPicture } from './useColourWorker.ts';

/** A place smaller than this [px] is refused. */
const leastPx = 12;

const names: { readonly [P in PlaceName]: string } = { sample: 'Blot', control: 'Clean cloth' };

const placed = (id: PlaceName, outline: Outline): StagePlace<PlaceName> => ({
  ...{ id, name: names[id], mid: middleOf(outline), outline, look: id },
});

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
  const [chosen, setChosen] = useState<PlaceName>('sample');
  const drawn =
    places === null
      ? [
          ...(found === null ? [] : [placed('sample', found.places.sample)]),
          ...(found?.places.controls ?? []).map((control, index) => ({
            ...placed('control', control),
            // One name is enough for all pieces of the clean cloth.
            ...(index === 0 ? {} : { name: '' }),
          })),
        ]
      : (['sample', 'control'] as const).map((name) => placed(name, outlineOf(places[name])));
  const change = (name: PlaceName, to: (area: Area) => Area) => {
    if (places !== null) onPlaces({ ...places, [name]: to(places[name]) });
  };
  return (
    <PlaceStage
      picture={picture}
      view={windowView(card, picture)}
      described={
        drawn.length === 0
          ? 'The card’s window in the photograph.'
          : 'The card’s window in the photograph, with clean cloth outlined in blue dashes and the blot in a red line.'
      }
      places={drawn}
      moving={
        places === null
          ? null
          : {
              label: 'Which place to move',
              chosen,
              onChosen: setChosen,
              onMove: (name, x, y) => change(name, (area) => movedTo(area, x, y)),
            }
      }
      tools={
        <>
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
        </>
      }
    />
  );
}
