import { useState } from 'react';
import { type RugEntry, withdrawnIds } from '../../../dossier/index.ts';
import { agreedPlan, stepId } from '../../../dossier/planFacts.ts';
import { Button, When } from '../../kit/index.ts';
import { useDossier } from '../dossierView.ts';
import { Part } from '../Part.tsx';
import { type Around, entryWords } from './entryWords.ts';

const shownFirst = 12;

function Line({
  entry,
  around,
  withdrawal,
}: {
  readonly entry: RugEntry;
  readonly around: Around;
  readonly withdrawal: RugEntry | undefined;
}) {
  const { isOwner, asked, nameOf, ask } = useDossier();
  const isTheirs = isOwner || entry.by === asked.person.person;
  const { did, words } = entryWords(entry.fact, around);
  const at = entry.fact.happenedAt ?? entry.at;
  const why = withdrawal?.fact.type === 'EntryWithdrawn' ? withdrawal.fact.reason : null;
  return (
    <li className={why === null ? 'story' : 'story withdrawn'}>
      <div className="story-when">
        <When at={at} />
      </div>
      <div>
        <div className="story-did">
          {why === null ? null : <span className="unseen">withdrawn: </span>}
          {nameOf(entry.by)} {did}
        </div>
        {words !== undefined && <div className="why story-words">{words}</div>}
        {entry.fact.happenedAt !== undefined && (
          <div className="why">
            written down <When at={entry.at} />
          </div>
        )}
        {withdrawal !== undefined && (
          <div className="correction">
            ↳ {nameOf(withdrawal.by)} withdrew this <When at={withdrawal.at} />: {why}
          </div>
        )}
      </div>
      {isTheirs &&
        why === null &&
        entry.fact.type !== 'DossierOpened' &&
        entry.fact.type !== 'RugReceived' && (
          <Button
            tone="ghost"
            label={`Withdraw: ${did}`}
            onPress={() => ask({ kind: 'withdraw', entry: entry.id })}
          >
            Withdraw
          </Button>
        )}
    </li>
  );
}

/** Every entry, newest first; a withdrawal stands beside what it corrects. */
export function HistoryPart() {
  const { entries, standing, colourName } = useDossier();
  const [all, setAll] = useState(false);
  const withdrawn = withdrawnIds(entries);
  const withdrawals = new Map(
    entries.flatMap((entry) =>
      entry.fact.type === 'EntryWithdrawn' ? [[entry.fact.entry, entry] as const] : [],
    ),
  );
  const steps = agreedPlan(standing)?.steps ?? [];
  const around: Around = {
    colour: colourName,
    step: (id) => steps.find((step) => stepId(step) === id)?.kind ?? id,
    mark: (id) => standing.marks.find(({ mark }) => mark === id)?.word ?? id,
  };
  const told = [...entries]
    .filter(({ fact }) => fact.type !== 'EntryWithdrawn' || !withdrawn.has(fact.entry))
    .reverse();
  const shown = all ? told : told.slice(0, shownFirst);
  return (
    <Part id="history" title="History">
      <ol className="history" reversed>
        {shown.map((entry) => (
          <Line key={entry.id} entry={entry} around={around} withdrawal={withdrawals.get(entry.id)} />
        ))}
      </ol>
      {told.length > shown.length && (
        <Button tone="ghost" wide onPress={() => setAll(true)}>
          All {told.length} entries
        </Button>
      )}
      <p className="why">
        Nothing is ever erased: a mistake is withdrawn with its reason and stays readable. Last seal{' '}
        {standing.seal.slice(0, 12) || 'none'}.
      </p>
    </Part>
  );
}
