import { useQuery } from '@tanstack/react-query';
import { Link } from 'wouter';
import type { TodayAnswer, TodayRow } from '../../contract/index.ts';
import type { Urgency } from '../../dossier/nextStep.ts';
import { asked, call, problemOf, serverNow } from '../call/index.ts';
import { Busy, Empty, ProblemNotice } from '../kit/index.ts';
import { DryingAlarms } from './DryingAlarms.tsx';
import { TodayLine } from './TodayLine.tsx';

type Group = Urgency | 'held';

const groups: readonly { readonly group: Group; readonly title: string }[] = [
  { group: 'now', title: 'Hands needed now' },
  { group: 'soon', title: 'Soon' },
  { group: 'waiting', title: 'Waiting for a client' },
  { group: 'held', title: 'Held back or out of the house' },
  { group: 'later', title: 'Later' },
];

/** A rug that waits for no client but is in quarantine or with somebody else stands apart. */
function groupOf({ next }: TodayRow): Group {
  const [first] = next;
  if (first === undefined) return 'later';
  const isHeld = first.deed.code === 'release-quarantine' || first.deed.code === 'fetch-back';
  return first.urgency === 'waiting' && isHeld ? 'held' : first.urgency;
}

/** Urgency follows the clock even when nobody records anything: ask again when something falls due [ms]. */
function untilNextDue(rows: readonly TodayRow[]): number {
  const waits = rows
    .flatMap(({ next }) => next.map(({ dueAt }) => (dueAt === null ? 0 : Date.parse(dueAt) - serverNow())))
    .filter((ms) => ms > 0);
  return Math.min(60_000, ...waits.map((ms) => ms + 500));
}

const dayName = new Intl.DateTimeFormat('en-GB', { weekday: 'long', day: 'numeric', month: 'long' });

/** Whose hands are needed where, most urgent first. */
export function TodayPage() {
  const { data, error, isPending } = useQuery({
    queryKey: ['today'],
    queryFn: () => asked(call<TodayAnswer>('/api/today')),
    refetchInterval: ({ state }) => untilNextDue(state.data?.rows ?? []),
  });
  const rows = data?.rows ?? [];
  const needed = rows.filter((row) => groupOf(row) === 'now').length;
  return (
    <div className="page">
      <div className="pageTop">
        <div>
          <h1>{dayName.format(new Date(data?.now ?? Date.now()))}</h1>
          {rows.length === 0 ? null : (
            <p className="lead" role="status">
              {rows.length} {rows.length === 1 ? 'rug' : 'rugs'} in the house, {needed}{' '}
              {needed === 1 ? 'needs' : 'need'} hands now
            </p>
          )}
        </div>
        <Link className="btn deskOnly" href="/receive">
          Receive rugs
        </Link>
      </div>
      <ProblemNotice problem={problemOf(error)} />
      {isPending ? <Busy words="Looking through the house" /> : null}
      {data !== undefined && rows.length === 0 ? (
        <Empty>
          <p>
            No rug is in the house. When one comes through the door, <Link href="/receive">receive it</Link>:
            from then on this page says whose hands it needs, and when.
          </p>
        </Empty>
      ) : null}
      <DryingAlarms />
      {groups.map(({ group, title }) => (
        <TodayGroup
          key={group}
          group={group}
          title={title}
          rows={rows.filter((row) => groupOf(row) === group)}
        />
      ))}
    </div>
  );
}

function TodayGroup(props: {
  readonly group: Group;
  readonly title: string;
  readonly rows: readonly TodayRow[];
}) {
  const { group, rows } = props;
  if (rows.length === 0) return null;
  return (
    <section className="group" aria-labelledby={`group-${group}`}>
      <h2 id={`group-${group}`}>
        {props.title} <small>{rows.length}</small>
      </h2>
      <ul className="rows">
        {rows.map((row) => (
          <li key={row.stream}>
            <TodayLine row={row} />
          </li>
        ))}
      </ul>
    </section>
  );
}
