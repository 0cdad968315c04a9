import { useEffect, useRef, useState } from 'react';
import type { ConditionFamily, Unnamed } from '../../core/condition/index.ts';
import { conditionFamilies, conditionWord, familyTitles, likelyWords } from '../../core/condition/index.ts';
import { Button, Empty, LineField } from '../kit/index.ts';

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
  const chosenWord = useRef<HTMLDivElement>(null);
  const wasPicked = useRef(false);
  const chosen = conditionWord(props.value);
  // The list a person chose from goes away; the focus stays where the answer now stands.
  useEffect(() => {
    if (!isOpen && wasPicked.current) chosenWord.current?.focus();
    wasPicked.current = false;
  }, [isOpen]);
  const pick = (word: string) => {
    props.onChange(word);
    wasPicked.current = true;
    setOpen(false);
  };
  if (!isOpen && props.value !== '')
    return (
      <div className="chosenWord" ref={chosenWord} tabIndex={-1}>
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
        <fieldset className="words">
          <legend className="name">What is it?</legend>
          <ul className="tiles">
            {shown.map((row) => (
              <li key={row.word}>
                <button
                  type="button"
                  className="tile wordTile"
                  aria-pressed={row.word === props.value}
                  onClick={() => pick(row.word)}
                >
                  <span>
                    {row.word}
                    <span className="why">{row.means}</span>
                  </span>
                </button>
              </li>
            ))}
          </ul>
          {props.problem === null || props.problem === undefined ? null : (
            <p className="fault">{props.problem}</p>
          )}
        </fieldset>
      )}
      {shown.length < fitting.length ? (
        <Button tone="ghost" onPress={() => setLong(true)}>
          Show all {fitting.length} words
        </Button>
      ) : null}
    </div>
  );
}
