import { useId, useState } from 'react';
import { Button, pictureAddress } from '../../kit/index.ts';
import { useDossier } from '../dossierView.ts';

/** Side of the square that is averaged [px of the picture]: pile is no flat colour. */
const patchPx = 15;

const hex = (value: number) => Math.round(value).toString(16).padStart(2, '0');

/** Mean colour around a point of a shown picture, or null where the browser will not tell. */
const colourAt = (image: HTMLImageElement, x: number, y: number): string | null => {
  const canvas = document.createElement('canvas');
  canvas.width = patchPx;
  canvas.height = patchPx;
  const context = canvas.getContext('2d');
  if (context === null) return null;
  const [left, top] = [x - patchPx / 2, y - patchPx / 2];
  context.drawImage(image, left, top, patchPx, patchPx, 0, 0, patchPx, patchPx);
  const { data } = context.getImageData(0, 0, patchPx, patchPx);
  const mean = (channel: number) => {
    let sum = 0;
    for (let at = channel; at < data.length; at += 4) sum += data[at] ?? 0;
    return sum / (data.length / 4);
  };
  return `#${hex(mean(0))}${hex(mean(1))}${hex(mean(2))}`;
};

/** The look of a colour, tapped on a photograph or chosen by hand; only to recognise it on a screen. */
export function PickColour({
  value,
  onChange,
}: {
  readonly value: string | undefined;
  readonly onChange: (looks: string) => void;
}) {
  const { standing } = useDossier();
  const id = useId();
  const photographs = standing.photographs.filter(({ shows }) => ['face', 'back', 'detail'].includes(shows));
  const [at, setAt] = useState(0);
  const photograph = photographs[at];
  return (
    <div className="pick-colour field">
      <div className="pick-now">
        <label htmlFor={id} className="name">
          How it looks
        </label>
        <input
          id={id}
          type="color"
          value={value ?? '#808080'}
          onChange={({ target }) => onChange(target.value)}
        />
        <span className="why">
          {value === undefined ? 'Not picked yet. ' : ''}Only to recognise it on a screen, no measurement.
        </span>
      </div>
      {photograph !== undefined && (
        <>
          {/* A tap on a picture has no keyboard twin of its own; the colour field above is it. */}
          <button
            type="button"
            className="pick-picture"
            tabIndex={-1}
            aria-label="Tap the colour on the photograph"
            onClick={({ currentTarget, clientX, clientY }) => {
              const image = currentTarget.querySelector('img');
              if (image === null || image.naturalWidth === 0) return;
              const box = image.getBoundingClientRect();
              const picked = colourAt(
                image,
                ((clientX - box.left) / box.width) * image.naturalWidth,
                ((clientY - box.top) / box.height) * image.naturalHeight,
              );
              if (picked !== null) onChange(picked);
            }}
          >
            <img src={pictureAddress(photograph.photo, 'shown')} alt="" />
          </button>
          {photographs.length > 1 && (
            <Button tone="ghost" onPress={() => setAt((at + 1) % photographs.length)}>
              Another photograph ({at + 1} of {photographs.length})
            </Button>
          )}
        </>
      )}
    </div>
  );
}
