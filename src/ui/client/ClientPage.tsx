import { useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Link } from 'wouter';
import type { ClientAnswer } from '../../contract/index.ts';
import type { ClientStanding } from '../../dossier/clientFacts.ts';
import { asked, call, problemOf, type ShownProblem, useMe } from '../call/index.ts';
import {
  Busy,
  Button,
  Empty,
  FactList,
  Notice,
  newId,
  ProblemNotice,
  Section,
  Sheet,
  useKept,
} from '../kit/index.ts';
import { RugLine } from '../rugs/RugLine.tsx';
import { stageWords } from '../rugs/stageWords.ts';
import { ClientForm, clientFactsOf, type TypedClient } from './ClientForm.tsx';
import { EraseSheet } from './EraseSheet.tsx';

type Known = Extract<ClientStanding, { readonly kind: 'known' }>;

/** One client: how to reach them, their rugs, and the end of their data. */
export function ClientPage({ client }: { readonly client: string }) {
  const me = useMe();
  const [isEditing, setEditing] = useState(false);
  const [isErasing, setErasing] = useState(false);
  const { data, error, isPending } = useQuery({
    queryKey: ['client', client],
    queryFn: () => asked(call<ClientAnswer>(`/api/clients/${encodeURIComponent(client)}`)),
  });
  if (isPending) return <Busy words="Opening the client" />;
  if (data === undefined) {
    return (
      <div className="page narrow">
        <h1>Client not shown</h1>
        <ProblemNotice problem={problemOf(error)} />
        <Link className="crumb" href="/clients">
          All clients
        </Link>
      </div>
    );
  }
  const { standing } = data;
  const known = standing.kind === 'known' ? standing : null;
  return (
    <div className="page">
      <div className="pageTop">
        <div>
          <Link className="crumb" href="/clients">
            Clients
          </Link>
          <h1>{known?.name ?? 'Client’s data erased'}</h1>
        </div>
        {known === null ? null : (
          <Link className="btn" href={`/receive?client=${encodeURIComponent(client)}`}>
            Receive rugs from them
          </Link>
        )}
      </div>
      <ProblemNotice problem={problemOf(error)} />
      <div className="cols two">
        {known === null ? (
          <Notice tone="plain" title="Their name, addresses and signatures can never be read again.">
            <p>What was recorded of the rugs stays, without the person.</p>
          </Notice>
        ) : (
          <Section
            title="How to reach them"
            aside={
              <Button tone="ghost" onPress={() => setEditing(true)}>
                Change
              </Button>
            }
          >
            <FactList
              rows={[
                { name: 'Phone', value: reach('tel:', known.phone) },
                { name: 'E-mail', value: reach('mailto:', known.email) },
                { name: 'Address', value: known.address ?? 'not given' },
                ...(known.note === undefined ? [] : [{ name: 'Note', value: known.note }]),
              ]}
            />
          </Section>
        )}
        <Section title="Their rugs">
          {data.rugs.length === 0 ? <Empty>No rug of theirs has come in yet.</Empty> : null}
          <ul className="rows">
            {data.rugs.map((row) => (
              <li key={row.stream}>
                <RugLine row={{ ...row, clientName: null }} aside={stageWords(row)} />
              </li>
            ))}
          </ul>
        </Section>
      </div>
      {known !== null && me?.roles.includes('owner') === true ? (
        <Button tone="stop" onPress={() => setErasing(true)}>
          Erase their data
        </Button>
      ) : null}
      {known === null ? null : (
        <>
          <EditSheet
            client={client}
            revision={data.revision}
            known={known}
            isOpen={isEditing}
            onClose={() => setEditing(false)}
          />
          <EraseSheet
            client={client}
            name={known.name}
            inHouse={data.rugs.filter((row) => row.inHouse).length}
            isOpen={isErasing}
            onClose={() => setErasing(false)}
          />
        </>
      )}
    </div>
  );
}

const reach = (scheme: string, way: string | undefined) =>
  way === undefined ? (
    'not given'
  ) : (
    <a className="crumb" href={`${scheme}${way}`}>
      {way}
    </a>
  );

const typedOf = ({ name, phone = '', email = '', address = '', note = '' }: Known): TypedClient => ({
  name,
  phone,
  email,
  address,
  note,
});

function EditSheet(props: {
  readonly client: string;
  readonly revision: number;
  readonly known: Known;
  readonly isOpen: boolean;
  readonly onClose: () => void;
}) {
  const { client, known } = props;
  const cache = useQueryClient();
  const [kept, setKept, forget] = useKept<TypedClient | null>(`client/${client}`, null);
  const [id, setId] = useState(newId);
  const [problem, setProblem] = useState<ShownProblem | null>(null);
  const typed = kept ?? typedOf(known);
  const record = async () => {
    const fact = { type: 'ClientChanged', ...clientFactsOf(typed) };
    const answer = await call(`/api/clients/${encodeURIComponent(client)}/entries`, {
      method: 'POST',
      body: { expectedRevision: props.revision, drafts: [{ id, fact }] },
    });
    if (!answer.ok) return setProblem(answer.problem);
    await cache.invalidateQueries({ queryKey: ['client', client] });
    forget();
    setId(newId());
    setProblem(null);
    props.onClose();
  };
  return (
    <Sheet title={`Change ${known.name}`} isOpen={props.isOpen} onClose={props.onClose}>
      <ClientForm
        typed={typed}
        onChange={setKept}
        problem={problem}
        button="Record the change"
        onDone={record}
      />
    </Sheet>
  );
}
