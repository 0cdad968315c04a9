import type { RowsQuery } from '../call/index.ts';
import { Check, LineField, Picker } from '../kit/index.ts';
import { stageOptions } from './stageWords.ts';

interface FiltersProps {
  readonly query: RowsQuery;
  readonly change: (changed: RowsQuery) => void;
  readonly places: readonly string[];
}

/** What to look for; every change is looked up at once. */
export function Filters({ query, change, places }: FiltersProps) {
  const { find = '', stage = '', place = '', inHouse = false } = query;
  const known = place === '' || places.includes(place) ? places : [place, ...places];
  const stageName = stageOptions.find(({ value }) => value === stage)?.words ?? '';
  const narrowed = [stageName, place, inHouse ? 'in the house' : ''].filter((word) => word !== '');
  return (
    <search className="form">
      <LineField
        label="Find by tag, client or word"
        type="search"
        hint="For instance 41, a client’s name, runner, silk."
        value={find}
        onChange={(next) => change({ find: next, tag: '' })}
      />
      <details className="more">
        <summary>
          Narrow by stage, place, in the house{narrowed.length === 0 ? '' : `: ${narrowed.join(', ')}`}
        </summary>
        <div className="filters">
          <Check
            label="Only in the house now"
            isSelected={inHouse}
            onChange={(next) => change({ inHouse: next })}
          />
          <Picker
            label="Stage"
            any="Any stage"
            options={stageOptions}
            value={stage}
            onChange={(next) => change({ stage: next })}
          />
          <Picker
            label="Place"
            any="Any place"
            options={known}
            value={place}
            onChange={(next) => change({ place: next })}
          />
        </div>
      </details>
    </search>
  );
}
