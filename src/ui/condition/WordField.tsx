import { useState } from 'react';
import type { ConditionFamily, Unnamed } from '../../core/condition/index.ts';
import { conditionFamilies, conditionWord, familyTitles, likelyWords } from '../../core/condition/index.ts';
import { Button, Choice, Empty, LineField } from '../kit/index.ts';

const first = 8;

/** Finds the word for a mark: the likely ones first, by family, or by typing a part of it. */
export function WordField(props: {
  readonly mark: Unnamed;
  readonly value: string;
  readonly onChange: (word: string) => void;
  readonly problem?: string | null;
}) {
  const [typed, setTyped] = useState('');
  const [family, setFamily] = useState<ConditionFamily | null>(null);
  const [isOpen, setOpen] = useState(props.value === '');
  const [isLong, setLong] = useState(false);
  const chosen = conditionWord(props.value);
  if (!isOpen && props.value !== '')
    return (
      <div className="chosenWord">
        <div>
          <b>{props.value}</b>
          {chosen === undefined ? null : <span className="why">{chosen.means}</span>}
        </div>
        <Button tone="ghost" onPress={() => setOpen(true)}>
          Other word
        </Button>
      </div>
    );
  const fitting = likelyWords(typed, props.mark).filter(
    (row) => family === null || row.family === family || row.alsoIn === family,
  );
  const shown = isLong || family !== null ? fitting : fitting.slice(0, first);
  return (
    <div className="form">
      <LineField
        label="Find a word"
        type="search"
        value={typed}
        onChange={setTyped}
        hint="For instance: hole, wine, moth, fringe"
      />
      <fieldset className="families">
        <legend className="unseen">Show only a family of words</legend>
        {conditionFamilies.map((each) => (
          <Button
            key={each}
            tone="ghost"
            isPressed={family === each}
            onPress={() => setFamily(family === each ? null : each)}
          >
            {familyTitles.find((row) => row.family === each)?.title ?? each}
          </Button>
        ))}
      </fieldset>
      {fitting.length === 0 ? (
        <Empty>
          <p>No word fits “{typed}”. Take the nearest word and say the rest in the note.</p>
        </Empty>
      ) : (
        <Choice
          label="What is it?"
          columns={2}
          isRequired
          options={shown.map((row) => ({ value: row.word, words: row.word, hint: row.means }))}
          value={props.value === '' ? null : props.value}
          onChange={(word) => {
            props.onChange(word);
            setOpen(false);
          }}
          problem={props.problem ?? null}
        />
      )}
      {shown.length < fitting.length ? (
        <Button tone="ghost" onPress={() => setLong(true)}>
          Show all {fitting.length} words
        </Button>
      ) : null}
    </div>
  );
}
