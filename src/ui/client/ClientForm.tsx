import { useState } from 'react';
import type { ClientFactOf } from '../../dossier/clientFacts.ts';
import type { ShownProblem } from '../call/index.ts';
import { Button, LineField, PassageField, ProblemNotice } from '../kit/index.ts';

/** A client as typed, before it is known whether it can be right. */
export interface TypedClient {
  readonly name: string;
  readonly phone: string;
  readonly email: string;
  readonly address: string;
  readonly note: string;
}

export const blankClient: TypedClient = { name: '', phone: '', email: '', address: '', note: '' };

/** What is recorded: fields left empty are not there at all. */
export function clientFactsOf(typed: TypedClient): Omit<ClientFactOf<'ClientAdded'>, 'type'> {
  const { name, ...rest } = typed;
  const given = Object.entries(rest).filter(([, value]) => value.trim() !== '');
  return { name: name.trim(), ...Object.fromEntries(given.map(([field, value]) => [field, value.trim()])) };
}

interface ClientFormProps {
  readonly typed: TypedClient;
  readonly onChange: (typed: TypedClient) => void;
  readonly problem: ShownProblem | null;
  readonly button: string;
  readonly onDone: () => Promise<void>;
}

/** The few things a workshop needs to know to reach somebody. */
export function ClientForm({ typed, onChange, problem, button, onDone }: ClientFormProps) {
  const [isBusy, setBusy] = useState(false);
  const set = (field: keyof TypedClient) => (value: string) => onChange({ ...typed, [field]: value });
  const isNoAddress = typed.email.trim() !== '' && !/^\S+@\S+\.\S+$/.test(typed.email.trim());
  return (
    <form
      className="form"
      onSubmit={async (event) => {
        event.preventDefault();
        if (typed.name.trim() === '' || isNoAddress || isBusy) return;
        setBusy(true);
        await onDone();
        setBusy(false);
      }}
    >
      <LineField label="Name" value={typed.name} onChange={set('name')} isRequired />
      <LineField label="Phone" type="tel" value={typed.phone} onChange={set('phone')} />
      <LineField
        label="E-mail"
        type="email"
        value={typed.email}
        onChange={set('email')}
        problem={
          isNoAddress ? `“${typed.email}” is no e-mail address. Write it such as name@example.org.` : null
        }
      />
      <PassageField label="Address" value={typed.address} onChange={set('address')} />
      <PassageField
        label="Note"
        hint="For the workshop only."
        value={typed.note}
        onChange={set('note')}
        rows={2}
      />
      <ProblemNotice problem={problem} />
      <Button type="submit" wide isDisabled={isBusy || typed.name.trim() === '' || isNoAddress}>
        {isBusy ? 'Recording…' : button}
      </Button>
    </form>
  );
}
