import { useQuery } from '@tanstack/react-query';
import { useDeferredValue, useState } from 'react';
import { Link, useLocation } from 'wouter';
import type { ClientSummary, ClientsAnswer } from '../../contract/index.ts';
import { asked, call, problemOf, type ShownProblem } from '../call/index.ts';
import { Busy, Button, Empty, LineField, newId, ProblemNotice, Sheet, useKept } from '../kit/index.ts';
import { blankClient, ClientForm, clientFactsOf, type TypedClient } from './ClientForm.tsx';

/** Finds clients by name, phone or e-mail, and adds new ones. */
export function ClientsPage() {
  const [find, setFind] = useState('');
  const wanted = useDeferredValue(find.trim());
  const [isAdding, setAdding] = useState(false);
  const { data, error, isPending } = useQuery({
    queryKey: ['clients', wanted],
    queryFn: () => asked(call<ClientsAnswer>(`/api/clients?find=${encodeURIComponent(wanted)}`)),
  });
  const rows = data?.rows ?? [];
  return (
    <div className="page">
      <div className="pageTop">
        <h1>Clients</h1>
        <Button onPress={() => setAdding(true)}>Add a client</Button>
      </div>
      <search className="sect">
        <LineField label="Find by name, phone or e-mail" type="search" value={find} onChange={setFind} />
      </search>
      <ProblemNotice problem={problemOf(error)} />
      {isPending ? <Busy words="Looking for clients" /> : null}
      {data !== undefined && rows.length === 0 ? (
        <Empty>
          <p>
            {wanted === ''
              ? 'There is no client yet. A client is added here, or on the spot when a rug is received.'
              : `No client answers to “${wanted}”. Try fewer letters, or add them as a new client.`}
          </p>
        </Empty>
      ) : null}
      <ul className="rows">
        {rows.map((row) => (
          <li key={row.client}>
            <ClientLine client={row} />
          </li>
        ))}
      </ul>
      <AddClientSheet isOpen={isAdding} onClose={() => setAdding(false)} />
    </div>
  );
}

function ClientLine({ client }: { readonly client: ClientSummary }) {
  if (client.erased === true) {
    return (
      <Link className="row plain" href={`/clients/${client.client}`}>
        <div className="sub">Client’s data erased</div>
      </Link>
    );
  }
  const reached = [client.phone, client.email].filter((way) => way !== undefined);
  return (
    <Link className="row plain" href={`/clients/${client.client}`}>
      <div>
        <div className="do">{client.name}</div>
        <div className="sub">{reached.length === 0 ? 'no phone or e-mail yet' : reached.join(' · ')}</div>
      </div>
    </Link>
  );
}

function AddClientSheet({ isOpen, onClose }: { readonly isOpen: boolean; readonly onClose: () => void }) {
  const [, go] = useLocation();
  const [typed, setTyped, forget] = useKept<TypedClient>('client/new', blankClient);
  const [client, setClient] = useState(newId);
  const [problem, setProblem] = useState<ShownProblem | null>(null);
  const add = async () => {
    const answer = await call('/api/clients', {
      method: 'POST',
      body: { client, added: { type: 'ClientAdded', ...clientFactsOf(typed) } },
    });
    if (!answer.ok) return setProblem(answer.problem);
    forget();
    setClient(newId());
    setProblem(null);
    onClose();
    go(`/clients/${client}`);
  };
  return (
    <Sheet title="Add a client" isOpen={isOpen} onClose={onClose}>
      <ClientForm typed={typed} onChange={setTyped} problem={problem} button="Add the client" onDone={add} />
    </Sheet>
  );
}
