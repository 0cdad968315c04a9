import { useQuery } from '@tanstack/react-query';
import { useDeferredValue, useState } from 'react';
import type { ClientSummary, ClientsAnswer } from '../../contract/index.ts';
import { asked, call, problemOf } from '../call/index.ts';
import { Busy, Button, Empty, LineField, Notice, newId, PassageField, ProblemNotice } from '../kit/index.ts';
import { newClient } from './intake.ts';
import type { StepProps } from './stepProps.ts';

/** Finds the client, or takes down a new one. */
export function ClientStep({ intake, change, faults }: StepProps) {
  const { client } = intake;
  if (client.kind === 'found')
    return (
      <div className="form">
        <p className="chosenClient">
          <b>{client.name}</b>
        </p>
        <Button tone="ghost" onPress={() => change({ client: { kind: 'none' } })}>
          Another client
        </Button>
      </div>
    );
  if (client.kind === 'new') {
    const set = (field: keyof typeof client.typed) => (value: string) =>
      change({ client: { ...client, typed: { ...client.typed, [field]: value } } });
    return (
      <div className="form">
        <LineField
          label="Name"
          value={client.typed.name}
          onChange={set('name')}
          isRequired
          focusFirst
          problem={faults['name'] ?? null}
        />
        <Namesakes
          name={client.typed.name}
          onFound={(found, name) => change({ client: { kind: 'found', client: found, name } })}
        />
        <LineField label="Phone" type="tel" value={client.typed.phone} onChange={set('phone')} />
        <LineField
          label="E-mail"
          type="email"
          value={client.typed.email}
          onChange={set('email')}
          problem={faults['email'] ?? null}
        />
        <PassageField label="Address" rows={2} value={client.typed.address} onChange={set('address')} />
        <Button tone="ghost" onPress={() => change({ client: { kind: 'none' } })}>
          Find a known client instead
        </Button>
      </div>
    );
  }
  return (
    <FindClient
      problem={faults['client'] ?? null}
      onFound={(found, name) => change({ client: { kind: 'found', client: found, name } })}
      onNew={(name) => {
        const made = newClient(newId());
        change({ client: made.kind === 'new' ? { ...made, typed: { ...made.typed, name } } : made });
      }}
    />
  );
}

function FindClient(props: {
  readonly problem: string | null;
  readonly onFound: (client: string, name: string) => void;
  readonly onNew: (name: string) => void;
}) {
  const [find, setFind] = useState('');
  const wanted = useDeferredValue(find.trim());
  const { data, error, isPending } = useQuery({
    queryKey: ['clients', wanted],
    queryFn: () => asked(call<ClientsAnswer>(`/api/clients?find=${encodeURIComponent(wanted)}`)),
  });
  const rows = (data?.rows ?? []).filter(isKnown).slice(0, 8);
  return (
    <div className="form">
      <LineField
        label="Find by name, phone or e-mail"
        type="search"
        value={find}
        onChange={setFind}
        problem={props.problem}
      />
      <Button onPress={() => props.onNew(/^[^\d@]+$/.test(find.trim()) ? find.trim() : '')}>
        New client
      </Button>
      <ProblemNotice problem={problemOf(error)} />
      {isPending ? <Busy words="Looking for clients" /> : null}
      {data !== undefined && rows.length === 0 ? (
        <Empty>
          <p>{wanted === '' ? 'No client has been here yet.' : `Nobody answers to “${wanted}”.`}</p>
        </Empty>
      ) : null}
      <ul className="rows picks">
        {rows.map((row) => (
          <li key={row.client}>
            <button
              type="button"
              className="row plain pick"
              onClick={() => props.onFound(row.client, row.name)}
            >
              <span>
                <span className="do">{row.name}</span>
                <span className="why">{[row.phone, row.email].filter(Boolean).join(' · ')}</span>
              </span>
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}

/** Somebody of this name is on record already: one person is not entered twice by oversight. */
function Namesakes(props: {
  readonly name: string;
  readonly onFound: (client: string, name: string) => void;
}) {
  const wanted = useDeferredValue(props.name.trim());
  const { data } = useQuery({
    queryKey: ['clients', wanted],
    queryFn: () => asked(call<ClientsAnswer>(`/api/clients?find=${encodeURIComponent(wanted)}`)),
    enabled: wanted.length >= 3,
  });
  const same = (data?.rows ?? [])
    .filter(isKnown)
    .filter(({ name }) => name.toLowerCase() === wanted.toLowerCase());
  if (same.length === 0 || wanted.length < 3) return null;
  return (
    <Notice tone="caution" title={`${wanted} is on record already.`}>
      <div className="actions">
        {same.slice(0, 4).map(({ client, name, phone, email }) => (
          <Button key={client} tone="ghost" onPress={() => props.onFound(client, name)}>
            Take {[name, phone ?? email].filter(Boolean).join(', ')}
          </Button>
        ))}
      </div>
    </Notice>
  );
}

type Known = Exclude<ClientSummary, { readonly erased: true }>;
const isKnown = (client: ClientSummary): client is Known => client.erased !== true;
