import { useQuery } from '@tanstack/react-query';
import { Link } from 'wouter';
import type { TodayAnswer, TodayRow } from '../../contract/index.ts';
import type { Urgency } from '../../dossier/nextStep.ts';
import { asked, call, problemOf } from '../call/index.ts';
import { Busy, Empty, ProblemNotice } from '../kit/index.ts';
import { TodayLine } from './TodayLine.tsx';

const groups: readonly { readonly urgency: Urgency; readonly title: string }[] = [
  { urgency: 'now', title: 'Hands needed now' },
  { urgency: 'soon', title: 'Soon' },
  { urgency: 'waiting', title: 'Waiting for a client' },
  { urgency: 'later', title: 'Later' },
];

const dayName = new Intl.DateTimeFormat('en-GB', { weekday: 'long', day: 'numeric', month: 'long' });

/** Whose hands are needed where, most urgent first. */
export function TodayPage() {
  const { data, error, isPending } = useQuery({
    queryKey: ['today'],
    queryFn: () => asked(call<TodayAnswer>('/api/today')),
    // Urgency follows the clock even when nobody records anything.
    refetchInterval: 60_000,
  });
  const rows = data?.rows ?? [];
  const count = (urgency: Urgency) => rows.filter((row) => urgencyOf(row) === urgency).length;
  return (
    <div className="page">
      <div className="pageTop">
        <div>
          <h1>{dayName.format(new Date(data?.now ?? Date.now()))}</h1>
          {rows.length === 0 ? null : (
            <p className="lead" role="status">
              {rows.length} {rows.length === 1 ? 'rug' : 'rugs'} in the house, {count('now')} need hands now
            </p>
          )}
        </div>
        <Link className="btn" href="/receive">
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
      {groups.map((group) => (
        <TodayGroup
          key={group.urgency}
          {...group}
          rows={rows.filter((row) => urgencyOf(row) === group.urgency)}
        />
      ))}
    </div>
  );
}

const urgencyOf = (row: TodayRow): Urgency => row.next[0]?.urgency ?? 'later';

function TodayGroup(props: {
  readonly urgency: Urgency;
  readonly title: string;
  readonly rows: readonly TodayRow[];
}) {
  const { urgency, rows } = props;
  if (rows.length === 0) return null;
  return (
    <section className="group" aria-labelledby={`group-${urgency}`}>
      <h2 id={`group-${urgency}`}>
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
