import { useState } from 'react';
import type { RugFactOf } from '../../dossier/index.ts';
import { Part } from '../dossier/Part.tsx';
import {
  Button,
  Choice,
  FactList,
  Notice,
  PassageField,
  ProblemNotice,
  useKept,
  When,
} from '../kit/index.ts';
import { useClosing } from './useClosing.ts';
import './closing.css';

interface DeclineDraft {
  readonly by: RugFactOf<'VisitDeclined'>['wishOf'] | null;
  readonly reason: string;
}

const blank: DeclineDraft = { by: null, reason: '' };
const deciders = [
  { value: 'workshop', words: 'The workshop' },
  { value: 'client', words: 'The client' },
] as const;

/** Ends the work with the reason; the rug then waits to be handed back. */
export function DeclineSection({ rug }: { readonly rug: string }) {
  const { visit, isOpen, act, isBusy, problem } = useClosing(rug);
  const [draft, setDraft, forget] = useKept<DeclineDraft>(`closing/${rug}/decline`, blank);
  const [isAsking, setAsking] = useState(false);
  if (visit === null) return null;
  const { declined } = visit;
  if (declined !== null) {
    return (
      <Part id="decline" title="Declined">
        <FactList
          rows={[
            { name: 'By', value: declined.wishOf === 'client' ? 'the client' : 'the workshop' },
            { name: 'When', value: <When at={declined.when} /> },
            { name: 'Reason', value: declined.reason },
          ]}
        />
      </Part>
    );
  }
  if (!isOpen) return null;
  const record = async () => {
    if (draft.by === null) return;
    if (await act({ type: 'VisitDeclined', wishOf: draft.by, reason: draft.reason.trim() })) forget();
  };
  return (
    <Part id="decline" title="Decline">
      {isAsking ? (
        <div className="form">
          <Choice
            label="Who decided?"
            options={deciders}
            value={draft.by}
            onChange={(by) => setDraft({ ...draft, by })}
            isRequired
          />
          <PassageField
            label="Why?"
            value={draft.reason}
            onChange={(reason) => setDraft({ ...draft, reason })}
            hint="Printed in the dossier; say it as you would to the client"
            isRequired
          />
          <Notice tone="caution" title="This ends the work.">
            <p>Nothing more is done to the rug. It keeps its tag until it is handed back and signed for.</p>
          </Notice>
          <ProblemNotice problem={problem} />
          <div className="actions">
            <Button
              tone="stop"
              isDisabled={draft.by === null || draft.reason.trim() === '' || isBusy}
              onPress={record}
            >
              Decline the work
            </Button>
            <Button tone="ghost" onPress={() => setAsking(false)}>
              Go on with the visit
            </Button>
          </div>
        </div>
      ) : (
        <>
          <p className="why">
            A rug that cannot be worked on, or that the client wants back, leaves with the reason on record.
          </p>
          <Button tone="ghost" onPress={() => setAsking(true)}>
            Decline the work
          </Button>
        </>
      )}
    </Part>
  );
}
