import { useState } from 'react';
import { Link } from 'wouter';
import { type Colleague, useMe, usePeople } from '../call/index.ts';
import { Button, Empty, Notice } from '../kit/index.ts';
import { AddPersonSheet } from './AddPersonSheet.tsx';
import { PersonSheet } from './PersonSheet.tsx';

/** Who works here and what each may do. */
export function PeoplePage() {
  const me = useMe();
  const people = usePeople();
  const [isAdding, setAdding] = useState(false);
  const [opened, setOpened] = useState<string | null>(null);
  const person = people.find((one) => one.person === opened);
  if (me !== null && !me.roles.includes('owner')) {
    return (
      <div className="page narrow">
        <h1>People</h1>
        <Notice tone="plain" title="Only an owner sees and changes who works here.">
          <p>
            To work at this tablet under your own name, use the button with your initials.{' '}
            <Link href="/">Back to Today</Link>
          </p>
        </Notice>
      </div>
    );
  }
  const here = people.filter(({ left }) => !left);
  const gone = people.filter(({ left }) => left);
  return (
    <div className="page narrow">
      <div className="pageTop">
        <h1>People</h1>
        <Button onPress={() => setAdding(true)}>Add a person</Button>
      </div>
      <p className="lead">
        Every entry in a dossier names who made it, so each person has an account of their own.
      </p>
      {here.length <= 1 ? (
        <Empty>You are alone so far. Add everybody who touches a rug or meets a client.</Empty>
      ) : null}
      <PersonRows people={here} onOpen={setOpened} />
      {gone.length > 0 ? (
        <section className="group">
          <h2>No longer here</h2>
          <PersonRows people={gone} onOpen={setOpened} />
        </section>
      ) : null}
      <AddPersonSheet isOpen={isAdding} onClose={() => setAdding(false)} />
      {person === undefined ? null : (
        <PersonSheet key={person.person} person={person} onClose={() => setOpened(null)} />
      )}
    </div>
  );
}

function PersonRows(props: {
  readonly people: readonly Colleague[];
  readonly onOpen: (person: string) => void;
}) {
  return (
    <ul className="rows">
      {props.people.map(({ person, name, roles, hasPin, left }) => (
        <li key={person} className="row plain">
          <div>
            <div className="do">{name}</div>
            <div className="sub">
              {left ? 'left' : `${roles.join(', ')} · ${hasPin ? 'has a PIN' : 'no PIN'}`}
            </div>
          </div>
          <Button tone="ghost" label={`Change ${name}`} onPress={() => props.onOpen(person)}>
            Change
          </Button>
        </li>
      ))}
    </ul>
  );
}
