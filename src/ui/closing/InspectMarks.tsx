import { useState } from 'react';
import type { RugFact, RugStanding } from '../../dossier/index.ts';
import { MarkPad, markLine, marksAndPictures, picturesOf, surfacesOf } from '../condition/index.ts';
import { Button, Choice, LineField, PhotoTaker, Picture, Sheet } from '../kit/index.ts';
import { type InspectionDraft, outcomeOf } from './inspection.ts';
import { MarkCrop } from './MarkCrop.tsx';
import { photographFact } from './useClosing.ts';

const fromIntake = [
  { value: 'unchanged', words: 'Unchanged' },
  { value: 'improved', words: 'Improved' },
  { value: 'worse', words: 'Worse' },
] as const;
const fromWork = [{ value: 'new', words: 'New' }, ...fromIntake] as const;

/** Every mark once more, beside its picture from the door; new ones are put down here. */
export function InspectMarks(props: {
  readonly rug: string;
  readonly standing: RugStanding;
  readonly draft: InspectionDraft;
  readonly onChange: (draft: InspectionDraft) => void;
  readonly act: (...facts: readonly RugFact[]) => Promise<boolean>;
}) {
  const { standing, draft, onChange } = props;
  const [isMarking, setMarking] = useState(false);
  const { frame, pictures, marks } = marksAndPictures(standing);
  const after = picturesOf(standing, 'after work');
  const surfaces = surfacesOf(pictures, frame);
  const newSurfaces = surfacesOf(after, frame).filter(
    ({ photo, toSurface }) => photo !== null && toSurface !== null,
  );
  const open = standing.marks.filter((mark) => outcomeOf(draft, mark) === null);
  return (
    <div className="form">
      {open.length > 0 && standing.marks.length > 1 ? (
        <Button
          tone="ghost"
          onPress={() =>
            onChange({
              ...draft,
              outcomes: {
                ...draft.outcomes,
                ...Object.fromEntries(open.map(({ mark }) => [mark, 'unchanged' as const])),
              },
            })
          }
        >
          The other {open.length === 1 ? 'one is' : `${open.length} are`} unchanged
        </Button>
      ) : null}
      <ol className="inspected">
        {standing.marks.map((mark, index) => (
          <li key={mark.mark}>
            <MarkCrop
              mark={mark}
              marks={marks}
              surfaces={surfaces}
              caption="At intake"
              alt={`Mark ${index + 1} at intake: ${markLine(mark)}`}
            />
            <MarkCrop
              mark={mark}
              marks={marks}
              surfaces={newSurfaces}
              caption="After the work"
              alt={`Mark ${index + 1} after the work`}
            />
            <div className="form inspectedForm">
              <h3>
                {index + 1}. {markLine(mark)}
              </h3>
              {mark.photos.length === 0 ? null : (
                <div className="closeUps">
                  {mark.photos.map((photo) => (
                    <Picture
                      key={photo}
                      photo={photo}
                      form="thumbnail"
                      alt={`Close-up of mark ${index + 1}`}
                    />
                  ))}
                </div>
              )}
              <Choice
                label={`Mark ${index + 1} now`}
                columns={3}
                options={mark.foundDuringWork === true ? fromWork : fromIntake}
                value={outcomeOf(draft, mark)}
                onChange={(outcome) =>
                  onChange({ ...draft, outcomes: { ...draft.outcomes, [mark.mark]: outcome } })
                }
              />
              {outcomeOf(draft, mark) === 'unchanged' || outcomeOf(draft, mark) === null ? null : (
                <>
                  <LineField
                    label={`What is seen of mark ${index + 1}`}
                    value={draft.notes[mark.mark] ?? ''}
                    onChange={(note) => onChange({ ...draft, notes: { ...draft.notes, [mark.mark]: note } })}
                  />
                  <PhotoTaker
                    label={`Photograph mark ${index + 1} now`}
                    keptAs={`inspect/${mark.mark}`}
                    onTaken={(photo) =>
                      props.act({
                        ...photographFact(photo, 'damage', 'after work'),
                        caption: `Mark ${index + 1}, ${mark.word}`,
                      })
                    }
                  />
                </>
              )}
            </div>
          </li>
        ))}
      </ol>
      <Button tone="ghost" onPress={() => setMarking(true)}>
        Put down a new mark
      </Button>
      <Sheet title="New marks" isOpen={isMarking} isWide onClose={() => setMarking(false)}>
        <MarkPad
          frame={frame}
          pictures={[...after, ...pictures]}
          marks={marks}
          keptAs={`inspect/${props.rug}`}
          foundDuringWork
          colours={standing.colours}
          onMark={(mark) => props.act(mark)}
          onCorners={(photo, corners) => props.act({ type: 'CornersTapped', photo, corners })}
        />
      </Sheet>
    </div>
  );
}
