import { useDeferredValue } from 'react';
import { Link, useLocation, useSearch } from 'wouter';
import { type RowsQuery, useRows } from '../call/index.ts';
import { Busy, Button, Empty, instantWords, ProblemNotice } from '../kit/index.ts';
import { Filters } from './Filters.tsx';
import { RugLine } from './RugLine.tsx';
import { stageWords } from './stageWords.ts';
import { TagScan } from './TagScan.tsx';

/** What is looked for stands in the address, so that going back from a dossier finds the same list. */
function useLookedFor() {
  const search = useSearch();
  const [, go] = useLocation();
  const known = new URLSearchParams(search);
  const query: RowsQuery = {
    find: known.get('find') ?? '',
    tag: known.get('tag') ?? '',
    stage: known.get('stage') ?? '',
    place: known.get('place') ?? '',
    inHouse: known.get('inHouse') === 'true',
  };
  const change = (changed: RowsQuery) => {
    const next = new URLSearchParams();
    for (const [name, value] of Object.entries({ ...query, ...changed })) {
      if (value !== '' && value !== false && value !== undefined) next.set(name, String(value));
    }
    go(`/rugs${next.size === 0 ? '' : `?${next}`}`, { replace: true });
  };
  return { query, change };
}

/** Finds any rug by tag, client, look, place or stage. */
export function RugsPage() {
  const { query, change } = useLookedFor();
  const asked = useDeferredValue(query);
  const { rows, isLoading, isFetching, hasMore, showMore, problem } = useRows(asked);
  const isNarrowed = Object.values(query).some((value) => value !== '' && value !== false);
  const places = [...new Set(rows.flatMap(({ place }) => (place === null ? [] : [place])))].sort();
  return (
    <div className="page">
      <div className="pageTop">
        <h1>Rugs</h1>
        <Link className="btn deskOnly" href="/receive">
          Receive rugs
        </Link>
      </div>
      <div className="sect form">
        <Filters query={query} change={change} places={places} />
        <TagScan onUnknownTag={(tag) => change({ tag, find: '' })} />
        {query.tag === '' ? null : <p className="lead">Only rugs with the tag {query.tag}.</p>}
      </div>
      <ProblemNotice problem={problem} />
      {isLoading ? <Busy words="Looking for rugs" /> : null}
      <p className="lead" role="status">
        {isLoading ? '' : `${count(rows.length)}${hasMore ? ', and more' : ''}`}
        {isFetching && !isLoading ? ' Looking…' : ''}
      </p>
      {!isLoading && problem === null && rows.length === 0 ? (
        <Empty>
          {isNarrowed ? (
            <p>
              No rug answers to all of this. Take a word or a filter away; a rug that went home no longer has
              its tag, so look for it by its client or its name.
            </p>
          ) : (
            <p>
              There is no rug yet. <Link href="/receive">Receive the first one</Link>; every rug ever taken in
              will be found here.
            </p>
          )}
        </Empty>
      ) : null}
      <ul className="rows">
        {rows.map((row) => (
          <li key={row.stream}>
            <RugLine
              row={row}
              detail={`dossier ${row.body.number}`}
              aside={
                <>
                  <span>{stageWords(row)}</span>
                  {row.body.quarantined ? <strong>▲ quarantine</strong> : null}
                  {row.body.receivedAt === null ? null : (
                    <span className="why">came {instantWords(row.body.receivedAt)}</span>
                  )}
                </>
              }
            />
          </li>
        ))}
      </ul>
      {hasMore ? (
        <div className="actions">
          <Button tone="ghost" onPress={showMore} isDisabled={isFetching}>
            {isFetching ? 'Looking…' : 'Show more'}
          </Button>
        </div>
      ) : null}
    </div>
  );
}

const count = (rugs: number) => (rugs === 0 ? '' : rugs === 1 ? 'One rug' : `${rugs} rugs`);
