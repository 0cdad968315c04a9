import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { call, type ShownProblem } from '../call/index.ts';
import { Button, LineField, Notice, PassageField, ProblemNotice, Sheet } from '../kit/index.ts';

interface EraseProps {
  readonly client: string;
  readonly name: string;
  /** Rugs of theirs still in the workshop's care. */
  readonly inHouse: number;
  readonly isOpen: boolean;
  readonly onClose: () => void;
}

/** Destroys the key to a client's data, after the name was typed and a reason given. */
export function EraseSheet({ client, name, inHouse, isOpen, onClose }: EraseProps) {
  const cache = useQueryClient();
  const [typedName, setTypedName] = useState('');
  const [reason, setReason] = useState('');
  const [problem, setProblem] = useState<ShownProblem | null>(null);
  const [isBusy, setBusy] = useState(false);
  const isSure = typedName.trim() === name && reason.trim() !== '';
  const erase = async () => {
    setBusy(true);
    const answer = await call(`/api/clients/${encodeURIComponent(client)}/erase`, {
      method: 'POST',
      body: { reason: reason.trim() },
    });
    setBusy(false);
    if (!answer.ok) return setProblem(answer.problem);
    await cache.invalidateQueries();
    onClose();
  };
  return (
    <Sheet title={`Erase ${name}`} isOpen={isOpen} onClose={onClose}>
      <div className="form">
        <Notice tone="stop" title="This cannot be undone.">
          <p>
            The key to their name, addresses and signatures is destroyed. The rugs’ dossiers stay and say
            “client’s data erased”. Backups made before still hold the key: see to them as your law asks.
          </p>
        </Notice>
        {inHouse > 0 ? (
          <Notice
            tone="caution"
            title={
              inHouse === 1 ? 'A rug of theirs is still here.' : `${inHouse} rugs of theirs are still here.`
            }
          >
            <p>Without the name nobody can be told or asked about it. Hand it back first.</p>
          </Notice>
        ) : null}
        <PassageField
          label="Reason"
          hint="Kept in the workshop’s record; write nothing personal."
          value={reason}
          onChange={setReason}
          isRequired
        />
        <LineField
          label={`Type the name to be sure: ${name}`}
          value={typedName}
          onChange={setTypedName}
          isRequired
        />
        <ProblemNotice problem={problem} />
        <Button tone="stop" wide isDisabled={!isSure || isBusy} onPress={erase}>
          {isBusy ? 'Erasing…' : 'Erase their data for ever'}
        </Button>
      </div>
    </Sheet>
  );
}
