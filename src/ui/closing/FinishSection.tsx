import { useState } from 'react';
import { finishingWorks, type RugFactOf } from '../../dossier/index.ts';
import { Part } from '../dossier/Part.tsx';
import { Button, Empty, ManyChoice, PassageField, ProblemNotice, useKept, When } from '../kit/index.ts';
import { useClosing } from './useClosing.ts';
import './closing.css';

type Work = RugFactOf<'FinishingDone'>['works'][number];

interface FinishDraft {
  readonly works: readonly Work[];
  readonly note: string;
}

const blank: FinishDraft = { works: [], note: '' };
const first = (words: string) => words.charAt(0).toUpperCase() + words.slice(1);

/** What is done to the dry rug before it is looked at for the last time. */
export function FinishSection({ rug }: { readonly rug: string }) {
  const { visit, isOpen, act, isBusy, problem } = useClosing(rug);
  const [typed, setTyped, forget] = useKept<FinishDraft>(`closing/${rug}/finish`, blank);
  const [isBegun, setBegun] = useState(typed !== blank);
  if (visit === null) return null;
  const record = async () => {
    const { works, note } = typed;
    const kept = await act({
      type: 'FinishingDone',
      works: [...works],
      ...(note.trim() === '' ? {} : { note: note.trim() }),
    });
    if (!kept) return;
    forget();
    setBegun(false);
  };
  return (
    <Part id="finish" title="Finish">
      {visit.finishings.length === 0 ? (
        <Empty>
          <p>Nothing finished yet: pile set, fringe groomed, repairs.</p>
        </Empty>
      ) : (
        <ul className="doneList">
          {visit.finishings.map(({ entry, works, note, when }) => (
            <li key={entry}>
              {works.join(', ')}
              <span className="why">
                <When at={when} />
                {note === undefined ? '' : ` · ${note}`}
              </span>
            </li>
          ))}
        </ul>
      )}
      {isOpen && !isBegun ? (
        <Button tone="ghost" onPress={() => setBegun(true)}>
          Write down finishing work
        </Button>
      ) : null}
      {isOpen && isBegun ? (
        <div className="form">
          <ManyChoice
            label="Done now"
            columns={3}
            options={finishingWorks.map((value) => ({ value, words: first(value) }))}
            value={typed.works}
            onChange={(works) => setTyped({ ...typed, works })}
          />
          <PassageField
            label="Note"
            rows={2}
            value={typed.note}
            onChange={(note) => setTyped({ ...typed, note })}
          />
          <ProblemNotice problem={problem} />
          <Button isDisabled={typed.works.length === 0 || isBusy} onPress={record}>
            Record
          </Button>
        </div>
      ) : null}
    </Part>
  );
}
