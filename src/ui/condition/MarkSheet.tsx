import { useState } from 'react';
import { conditionWord, gradeMeanings, type RugFrame } from '../../core/condition/index.ts';
import { stainClasses } from '../../core/wash/index.ts';
import { activityWords, confidenceWords, placeWords } from '../../text/conditionWords.ts';
import {
  Button,
  Choice,
  LineField,
  ManyChoice,
  PassageField,
  PhotoTaker,
  Picture,
  Sheet,
} from '../kit/index.ts';
import { ExtentPart } from './ExtentPart.tsx';
import { type MarkDraft, named, placeProblem } from './markDraft.ts';
import { PlaceFields, placesOf, type TypedPlace } from './PlaceFields.tsx';
import { WordField } from './WordField.tsx';

const gradeOptions = gradeMeanings.map(({ grade, title, means }) => ({
  value: String(grade),
  words: `${grade} · ${title}`,
  hint: means,
}));
const activityOptions = (['stable', 'slow', 'active', 'unknown'] as const).map((value) => ({
  value,
  words: activityWords[value],
}));
const stainOptions = stainClasses.map((value) => ({ value, words: value }));
const confidenceOptions = (['certain', 'probable', 'possible'] as const).map((value) => ({
  value,
  words: confidenceWords[value],
}));
const sideOptions = [
  { value: 'face', words: 'Face only' },
  { value: 'back', words: 'Back only' },
  { value: 'both', words: 'Goes through' },
] as const;

/** A colour of the rug by its id. */
export interface NamedColour {
  readonly colour: string;
  readonly name: string;
}

interface MarkSheetProps {
  readonly draft: MarkDraft;
  readonly frame: RugFrame | null;
  /** True when the place is typed instead of drawn. */
  readonly byNumbers: boolean;
  readonly usedWords: readonly string[];
  /** Colours of the rug that have been named. */
  readonly colours: readonly NamedColour[];
  readonly isOpen: boolean;
  readonly onChange: (draft: MarkDraft) => void;
  readonly onSave: () => void;
  readonly onClose: () => void;
  readonly onRemove?: (() => void) | undefined;
}

const atEdge = ({ pointsMm }: MarkDraft, frame: RugFrame | null): boolean =>
  frame !== null &&
  pointsMm.some(
    ({ xMm, yMm }) =>
      Math.min(xMm, yMm, frame.widthMm - xMm, frame.lengthMm - yMm) <
      0.04 * Math.min(frame.widthMm, frame.lengthMm),
  );

const leastPoints = { point: 1, line: 2, polygon: 3 } as const;

/** Names a mark and says how bad it is. Word and grade are enough; the rest can be added when there is time. */
export function MarkSheet(props: MarkSheetProps) {
  const { draft, frame, onChange } = props;
  const [places, setPlaces] = useState<readonly TypedPlace[]>(() => {
    const known = placesOf(draft.pointsMm);
    return known.length > 0 ? known : [{ key: 'first', xMm: null, yMm: null }];
  });
  const [wasTried, setTried] = useState(false);
  const row = conditionWord(draft.word);
  const points = Math.max(draft.pointsMm.length, draft.drawn?.points.length ?? 0);
  const unplaced = points < leastPoints[draft.shape];
  const missing = draft.word === '' || draft.grade === null || unplaced;
  const save = () => {
    setTried(true);
    if (!missing && placeProblem(draft, frame) === null) props.onSave();
  };
  return (
    <Sheet title="What is this mark?" isOpen={props.isOpen} onClose={props.onClose}>
      <div className="form markForm">
        {props.byNumbers ? (
          <PlaceFields
            draft={draft}
            frame={frame}
            places={places}
            onChange={(next, typed) => {
              setPlaces(typed);
              onChange(next);
            }}
          />
        ) : (
          <p className="hint">
            {frame === null || draft.pointsMm.length === 0
              ? 'Its place is kept on the picture.'
              : placeWords(draft.pointsMm, frame, draft.side)}
          </p>
        )}
        <WordField
          mark={{ shape: draft.shape, atEdge: atEdge(draft, frame), used: props.usedWords }}
          value={draft.word}
          onChange={(word) => onChange(named(draft, word))}
          problem={wasTried && draft.word === '' ? 'The mark has no word yet. Choose the nearest one.' : null}
        />
        <Choice
          label="How bad is it?"
          columns={1}
          isRequired
          options={gradeOptions}
          value={draft.grade === null ? null : String(draft.grade)}
          onChange={(grade) => onChange({ ...draft, grade: Number(grade) })}
          problem={
            wasTried && draft.grade === null ? 'Choose a grade; the usual one is set with the word.' : null
          }
        />
        {props.byNumbers ? null : (
          <Choice
            label="Side"
            columns={3}
            options={sideOptions}
            value={draft.side}
            onChange={(side) => onChange({ ...draft, side })}
          />
        )}
        {row?.stain === undefined && draft.stain === null ? null : (
          <Choice
            label="Stain of"
            columns={2}
            options={stainOptions}
            value={draft.stain}
            onChange={(stain) => onChange({ ...draft, stain })}
            hint="Unknown is worked as the most stubborn"
          />
        )}
        {draft.stain === null || props.colours.length === 0 ? null : (
          <ManyChoice
            label="Colours under it"
            options={props.colours.map(({ colour, name }) => ({ value: colour, words: name }))}
            value={draft.colours}
            onChange={(colours) => onChange({ ...draft, colours })}
            hint="None chosen counts as all of them"
          />
        )}
        <ExtentPart draft={draft} frame={frame} onChange={onChange} />
        <Choice
          label="Does it grow?"
          columns={2}
          options={activityOptions}
          value={draft.activity}
          onChange={(activity) => onChange({ ...draft, activity })}
        />
        <LineField
          label="Cause, if known or guessed"
          value={draft.cause}
          onChange={(cause) => onChange({ ...draft, cause })}
        />
        {draft.cause.trim() === '' ? null : (
          <Choice
            label="How sure is the cause?"
            columns={3}
            options={confidenceOptions}
            value={draft.causeConfidence}
            onChange={(causeConfidence) => onChange({ ...draft, causeConfidence })}
          />
        )}
        <div className="closeUps">
          {draft.photos.map((photo, index) => (
            <Picture key={photo} photo={photo} form="thumbnail" alt={`Close-up ${index + 1}`} />
          ))}
          <PhotoTaker
            label="Take a close-up"
            keptAs={`mark/${draft.mark}`}
            onTaken={({ photo }) => onChange({ ...draft, photos: [...new Set([...draft.photos, photo])] })}
          />
        </div>
        <LineField
          label="Client’s initials, if seen together"
          value={draft.clientInitials}
          mostCharacters={8}
          onChange={(clientInitials) => onChange({ ...draft, clientInitials })}
        />
        <PassageField
          label="Note"
          value={draft.note}
          onChange={(note) => onChange({ ...draft, note })}
          rows={2}
        />
        {wasTried && unplaced ? (
          <p className="fault" role="alert">
            The mark has {points === 0 ? 'no place' : 'too few places'} yet. Give{' '}
            {props.byNumbers ? 'both numbers of each place' : 'its place on the picture'}.
          </p>
        ) : null}
        <div className="actions">
          <Button onPress={save}>Keep this mark</Button>
          {props.onRemove === undefined ? null : (
            <Button tone="stop" onPress={props.onRemove}>
              Throw it away
            </Button>
          )}
        </div>
      </div>
    </Sheet>
  );
}
