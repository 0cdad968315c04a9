import { useQuery } from '@tanstack/react-query';
import { useDeferredValue, useMemo, useState } from 'react';
import { useSearchParams } from 'wouter';
import type { RulebookAnswer } from '../../contract/index.ts';
import { type RuleEntry, type RuleGroup, ruleEntries, ruleGroups } from '../../core/wash/index.ts';
import { rulebookOf } from '../../dossier/index.ts';
import { asked, call, useMe, useSettings } from '../call/index.ts';
import { sourceWords } from '../dossier/limitWords.ts';
import { Button, Empty, LineField, Notice, Picker } from '../kit/index.ts';
import { RuleHistory } from './RuleHistory.tsx';
import { RuleRow } from './RuleRow.tsx';
import { RuleSheet } from './RuleSheet.tsx';
import { groupNames, rowHolds, ruleRowsOf } from './ruleWords.ts';
import './rules.css';

/** Every rule, limit, dwell, dose and forbidden pair, with reason and source; the owner changes them here. */
export function RulesPage() {
  const settings = useSettings();
  const isOwner = useMe()?.roles.includes('owner') === true;
  const [find, setFind] = useState(useSearchParams()[0].get('find') ?? '');
  const [group, setGroup] = useState('');
  const [edited, setEdited] = useState<RuleEntry | 'own mixture' | null>(null);
  const book = useMemo(() => rulebookOf(settings), [settings]);
  const rows = useMemo(() => ruleRowsOf(ruleEntries(book)), [book]);
  const changed = useMemo(
    () => new Set((settings.ruleChanges ?? []).map(({ address }) => address)),
    [settings.ruleChanges],
  );
  const history = useQuery({
    queryKey: ['state', 'rulebook', book.version],
    queryFn: () => asked(call<RulebookAnswer>('/api/rulebook')),
  });
  const wanted = useDeferredValue(find.trim());
  const shown = rows.filter(
    (row) => (group === '' || row.group === group) && rowHolds(row, wanted, sourceWords(row.source)),
  );
  return (
    <div className="page">
      <h1>Rules</h1>
      <p className="lead">
        What every plan of this workshop is judged by. Rulebook <b>{book.version}</b>; each plan prints the
        one it used.
      </p>
      {isOwner ? null : (
        <Notice tone="plain" title="Only an owner changes these.">
          <p>They are shown so that you know why a plan says what it says.</p>
        </Notice>
      )}
      <div className="sect form ruleFilters">
        <LineField
          label="Find a rule"
          type="search"
          value={find}
          onChange={setFind}
          hint="Such as: silk, R06, dwell, chlorine"
        />
        <Picker
          label="Which"
          any="All of them"
          options={ruleGroups.map((value) => ({ value, words: groupNames[value] }))}
          value={group}
          onChange={setGroup}
        />
      </div>
      <p className="lead" role="status">
        {shown.length === rows.length ? `${rows.length} rows` : `${shown.length} of ${rows.length} rows`}
        {changed.size === 0 ? '' : `; ${changed.size} changed here`}
      </p>
      {shown.length === 0 ? (
        <Empty>
          <p>No rule holds all these words. Take one away.</p>
        </Empty>
      ) : null}
      {ruleGroups.map((name) => (
        <Group
          key={name}
          group={name}
          rows={shown.filter((row) => row.group === name)}
          isOpen={wanted !== '' || group === name}
          areRowsOpen={wanted !== '' && shown.length < 12}
          changed={changed}
          edit={isOwner ? setEdited : null}
        />
      ))}
      <RuleHistory history={history.data?.history ?? []} />
      {edited === null ? null : <RuleSheet edited={edited} onClose={() => setEdited(null)} />}
    </div>
  );
}

function Group(props: {
  readonly group: RuleGroup;
  readonly rows: ReturnType<typeof ruleRowsOf>;
  readonly isOpen: boolean;
  readonly areRowsOpen: boolean;
  readonly changed: ReadonlySet<string>;
  readonly edit: ((entry: RuleEntry | 'own mixture') => void) | null;
}) {
  const { group, rows, isOpen, areRowsOpen, changed, edit } = props;
  if (rows.length === 0) return null;
  const moved = rows.filter(({ parts }) =>
    parts.some(({ entries }) => entries.some(({ address }) => changed.has(address))),
  ).length;
  return (
    <section className="sect">
      <details className="ruleGroup" open={isOpen}>
        <summary>
          <h2>{groupNames[group]}</h2>
          <span className="why">
            {rows.length === 1 ? '1 row' : `${rows.length} rows`}
            {moved === 0 ? '' : `, ${moved} changed here`}
          </span>
        </summary>
        {rows.map((row) => (
          <RuleRow key={row.key} row={row} isOpen={areRowsOpen} changed={changed} edit={edit} />
        ))}
        {group === 'forbidden mixture' && edit !== null ? (
          <div className="actions">
            <Button tone="ghost" onPress={() => edit('own mixture')}>
              Forbid another mixture
            </Button>
          </div>
        ) : null}
      </details>
    </section>
  );
}
