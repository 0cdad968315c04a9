import { useState } from 'react';
import { call } from '../../call/index.ts';
import { type Signature, SignaturePad } from '../../condition/index.ts';
import { Button, ProblemNotice, Sheet } from '../../kit/index.ts';
import { useDossier } from '../dossierView.ts';
import { useForm } from '../useForm.ts';

/** Signs a receipt that was made out while nobody was there to sign. */
export function ReceiptSheet({ onClose }: { readonly onClose: () => void }) {
  const { visit, client, settings } = useDossier();
  const { act, isBusy, problem } = useForm('sign receipt', onClose);
  const [signature, setSignature] = useState<Signature | null>(null);
  const [refused, setRefused] = useState<typeof problem>(null);
  if (visit === null || client === null || client.erased === true) return null;
  const { consignment } = visit.received;
  const record = async (signed: Signature) => {
    // The strokes are the client's own data: they go where they can be erased with them.
    const kept = await call(`/api/clients/${encodeURIComponent(client.client)}/entries`, {
      method: 'POST',
      body: { expectedRevision: 0, drafts: [{ id: signed.signature, fact: signed }] },
    });
    setRefused(kept.ok ? null : kept.problem);
    if (kept.ok) await act({ type: 'ReceiptSigned', signature: signed.signature });
  };
  const shown = refused ?? problem;
  return (
    <Sheet title="Sign the receipt" isOpen onClose={onClose}>
      <p>
        <a
          className="btn ghost"
          href={`/api/consignments/${consignment}/receipt.pdf`}
          target="_blank"
          rel="noreferrer"
        >
          Show the receipt
        </a>
      </p>
      <SignaturePad
        statement={`I handed over to ${settings.name} the rugs on the receipt of consignment ${consignment}, which was shown to me today, on its terms.`}
        name={client.name}
        value={signature}
        onChange={setSignature}
      />
      {shown && <ProblemNotice problem={shown} />}
      <Button
        wide
        isDisabled={signature === null || isBusy}
        onPress={() => signature !== null && record(signature)}
      >
        Record
      </Button>
    </Sheet>
  );
}
