import { Button, Empty, PhotoTaker, Picture } from '../kit/index.ts';
import type { Photographed } from './intake.ts';
import type { RugStepProps } from './stepProps.ts';

const kinds = [
  { shows: 'face', words: 'Photograph the face', alt: 'Face' },
  { shows: 'back', words: 'Photograph the back', alt: 'Back' },
  { shows: 'label', words: 'Photograph a label', alt: 'Label' },
  { shows: 'damage', words: 'Photograph damage', alt: 'Damage' },
] as const;

const altOf = (shows: Photographed['shows']): string =>
  kinds.find((kind) => kind.shows === shows)?.alt ?? 'Picture';

/** Photographs straight from the camera: both sides first, whole, from above. */
export function PicturesStep({ rug, changeRug }: RugStepProps) {
  const taken = new Set(rug.photographs.map(({ shows }) => shows));
  return (
    <div className="form">
      <p className="hint">
        Stand so that all four corners are in the picture. Daylight from one side shows the most. A weave card
        laid on the face lets its colours be compared after the work; keep the card for that picture too.
      </p>
      <div className="takers">
        {kinds.map(({ shows, words }) => (
          <PhotoTaker
            key={shows}
            label={taken.has(shows) ? `${words} once more` : words}
            tone={shows === 'face' && !taken.has('face') ? 'act' : 'ghost'}
            keptAs={`receive/${rug.rug}/${shows}`}
            onTaken={({ photo, widthPx, heightPx }) =>
              changeRug((before) =>
                before.photographs.some((other) => other.photo === photo)
                  ? {}
                  : {
                      photographs: [
                        ...before.photographs,
                        { type: 'PhotographTaken', photo, widthPx, heightPx, shows, occasion: 'intake' },
                      ],
                    },
              )
            }
          />
        ))}
      </div>
      {rug.photographs.length === 0 ? (
        <Empty>
          <p>No picture yet. A rug can be taken in without one, but a picture says what words forget.</p>
        </Empty>
      ) : (
        <ul className="taken">
          {rug.photographs.map(({ photo, shows }, index) => (
            <li key={photo}>
              <Picture photo={photo} form="thumbnail" alt={`${altOf(shows)}, picture ${index + 1}`} />
              <span>{altOf(shows)}</span>
              <Button
                tone="ghost"
                label={`Leave out picture ${index + 1}`}
                onPress={() =>
                  changeRug((before) => ({
                    photographs: before.photographs.filter((other) => other.photo !== photo),
                    corners: Object.fromEntries(
                      Object.entries(before.corners).filter(([name]) => name !== photo),
                    ),
                  }))
                }
              >
                Leave out
              </Button>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
