import { useState } from 'react';
import { Choice } from '../kit/index.ts';
import type { Slot } from './colourTalk.ts';
import { areaAt, cornerNames, type NamedColour, pointAt, type Share, shareAt } from './comparePlaces.ts';
import { PlaceStage } from './PlaceStage.tsx';
import { outlineOf } from './places.ts';
import type { ShownPicture } from './useColourWorker.ts';

const whole = ({ widthPx, heightPx }: ShownPicture) => ({ x: 0, y: 0, width: widthPx, height: heightPx });

/** A cross of this reach [share of the picture's width] marks a corner. */
const crossShare = 0.025;

/** The rug's four corners on one picture. */
export function CornersOn(props: {
  readonly slot: Slot;
  readonly picture: ShownPicture;
  readonly corners: readonly Share[];
  readonly onCorners: (corners: readonly Share[]) => void;
}) {
  const { picture, corners, slot } = props;
  const [chosen, setChosen] = useState('0');
  const points = corners.map((corner) => pointAt(corner, picture));
  const reach = crossShare * picture.widthPx;
  return (
    <PlaceStage
      picture={picture}
      view={whole(picture)}
      described={`The picture from ${slot} the work, with the rug’s four corners.`}
      places={points.map(([x, y], index) => ({
        id: String(index),
        name: cornerNames[index] ?? '',
        mid: [x, y] as const,
        outline: [
          [x - reach, y],
          [x, y - reach],
          [x + reach, y],
          [x, y + reach],
        ] as const,
        look: 'corner' as const,
      }))}
      moving={{
        label: `Corner, ${slot} the work`,
        chosen,
        onChosen: setChosen,
        onMove: (id, x, y) =>
          props.onCorners(
            corners.map((corner, index) => (String(index) === id ? shareAt(x, y, picture) : corner)),
          ),
      }}
    >
      <polygon className="frame" points={points.map((point) => point.join(',')).join(' ')} />
    </PlaceStage>
  );
}

/** A place for each colour, shown on the picture from before. */
export function ColoursOn(props: {
  readonly picture: ShownPicture;
  readonly colours: readonly NamedColour[];
  readonly places: Readonly<Record<string, Share>>;
  readonly onPlaces: (places: Readonly<Record<string, Share>>) => void;
}) {
  const { picture, colours, places } = props;
  const [picked, setPicked] = useState<string | null>(null);
  const waiting = colours.find(({ name }) => places[name] === undefined)?.name;
  const chosen = picked ?? waiting ?? colours[0]?.name;
  if (chosen === undefined) return null;
  return (
    <PlaceStage
      picture={picture}
      view={whole(picture)}
      described="The picture from before the work, with a square where each colour is measured."
      places={colours.map(({ name }) => {
        const place = places[name];
        return {
          id: name,
          name,
          mid: place === undefined ? null : pointAt(place, picture),
          outline: place === undefined ? [] : outlineOf(areaAt(place, picture)),
          look: 'sample' as const,
        };
      })}
      moving={{
        label: 'Colour to show on the picture',
        chosen,
        onChosen: setPicked,
        onMove: (name, x, y) => props.onPlaces({ ...places, [name]: shareAt(x, y, picture) }),
      }}
    />
  );
}

/** How the pictures are laid over each other. */
export function AlignBy(props: {
  readonly value: 'corners' | 'card';
  readonly onChange: (value: 'corners' | 'card') => void;
}) {
  return (
    <Choice
      label="Laid over each other by"
      columns={2}
      options={[
        { value: 'corners', words: 'The rug’s corners', hint: 'the whole rug shows in both pictures' },
        { value: 'card', words: 'The card', hint: 'it lay at the same place of the rug both times' },
      ]}
      {...props}
    />
  );
}
