import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import type { ClientAnswer, PaperHashAnswer } from '../../../contract/index.ts';
import type { RugFactOf } from '../../../dossier/index.ts';
import { asked, call, problemOf, type ShownProblem } from '../../call/index.ts';
import { type Signature, SignaturePad } from '../../condition/index.ts';
import { Busy, Button, Check, Choice, Notice, newId, ProblemNotice, Sheet } from '../../kit/index.ts';
import { useDossier } from '../dossierView.ts';
import { counted, moneyWords } from '../figures.ts';
import { useField, useForm } from '../useForm.ts';
import { RiskList, useRisks } from './AgreeSection.tsx';
import { type Agreed, agreedOf, type How, HowFields, nothingSaid, type Said } from './HowFields.tsx';

const ways: readonly { readonly value: How; readonly words: string; readonly hint: string }[] = [
  { value: 'signature on screen', words: 'Signs here', hint: 'on this screen, now' },
  { value: 'paper photographed', words: 'Signed the paper', hint: 'photograph it' },
  { value: 'letter or e-mail', words: 'Wrote', hint: 'letter or e-mail' },
  { value: 'spoken', words: 'Said so', hint: 'words, time and a witness' },
];

/** Keeps the strokes in the client's own stream, where they can be erased with the client. */
async function keepSignature(client: string, signature: Signature): Promise<ShownProblem | null> {
  const known = await call<ClientAnswer>(`/api/clients/${client}`);
  if (!known.ok) return known.problem;
  const kept = await call(`/api/clients/${client}/entries`, {
    method: 'POST',
    body: { expectedRevision: known.value.revision, drafts: [{ id: newId(), fact: signature }] },
  });
  return kept.ok ? null : kept.problem;
}

/** Shows the consent paper, the risks and the ceiling, and records how the client agreed to them. */
export function ConsentSheet({ onClose }: { readonly onClose: () => void }) {
  const { rug, visit, client, standing } = useDossier();
  const risks = useRisks();
  const { form, act, isBusy, problem } = useForm('consent', onClose);
  const [how, setHow] = useField<How | null>(form, 'how', null);
  const [said, setSaid] = useField<Said>(form, 'said', nothingSaid);
  const [signature, setSignature] = useField<Signature | null>(form, 'signature', null);
  /** Hash of the paper the client has seen: a paper that changed since was not seen. */
  const [seen, setSeen] = useState<string | null>(null);
  const [unkept, setUnkept] = useState<ShownProblem | null>(null);
  const paper = useQuery({
    queryKey: ['rug', rug, 'consent', standing.revision],
    queryFn: () => asked(call<PaperHashAnswer>(`/api/rugs/${rug}/papers/consent/hash`)),
  });
  const plan = visit?.plan ?? null;
  const quote = visit?.quote ?? null;
  if (plan === null || quote === null)
    return (
      <Sheet title="Consent" isOpen onClose={onClose}>
        <Notice tone="stop" title="Not yet.">
          <p>
            {plan === null ? 'Put the plan on record first: the client agrees to a plan. ' : ''}
            {quote === null ? 'Quote the price first, with a ceiling it will not exceed.' : ''}
          </p>
        </Notice>
      </Sheet>
    );
  const sha256 = paper.data?.sha256;
  const isSeen = sha256 !== undefined && seen === sha256;
  const signed = signature !== null && signature.paper === sha256 ? signature : null;
  const clientName = client === null || client.erased ? '' : client.name;
  const named = risks.length === 0 ? '' : `, to the ${counted(risks.length, 'risk')} named in it,`;
  const statement = `I have read the consent paper. I agree to the wash plan (${plan.method})${named} and to a price of at most ${moneyWords(quote.notToExceed)}.`;
  const agreed: Agreed | null = how === null ? null : agreedOf(how, said, signed?.signature ?? null);
  const record = async () => {
    if (agreed === null || sha256 === undefined) return;
    if (agreed.how === 'signature on screen' && signed !== null && client !== null) {
      const refusal = await keepSignature(client.client, signed);
      setUnkept(refusal);
      if (refusal !== null) return;
    }
    const fact: RugFactOf<'ConsentGiven'> = {
      type: 'ConsentGiven',
      plan: plan.fingerprint,
      paper: sha256,
      risks: risks.map(({ text }) => text),
      notToExceed: quote.notToExceed,
      agreed,
    };
    await act(fact);
  };
  return (
    <Sheet title="Consent" isOpen onClose={onClose}>
      {paper.isPending && <Busy words="Typesetting the consent paper" />}
      <ProblemNotice problem={problemOf(paper.error)} />
      <p>
        <b>{plan.method}</b>, not to exceed <b>{moneyWords(quote.notToExceed)}</b>
      </p>
      <RiskList risks={risks} />
      <p>
        <a
          className="btn ghost wide"
          href={`/api/rugs/${rug}/papers/consent.pdf`}
          target="_blank"
          rel="noreferrer"
        >
          Open the paper (PDF)
        </a>
      </p>
      {sha256 !== undefined && <p className="why seal">SHA-256 of this paper: {sha256}</p>}
      <Check
        label="The client has seen this paper"
        hint="what they agree to is bound to exactly this text"
        isSelected={isSeen}
        onChange={(ticked) => setSeen(ticked && sha256 !== undefined ? sha256 : null)}
      />
      <Choice label="How the client agrees" columns={2} options={ways} value={how} onChange={setHow} />
      {how === 'signature on screen' && sha256 !== undefined && (
        <SignaturePad
          statement={statement}
          name={clientName}
          value={signed}
          onChange={setSignature}
          paper={sha256}
        />
      )}
      {how !== null && how !== 'signature on screen' && (
        <HowFields how={how} said={said} onChange={setSaid} />
      )}
      <ProblemNotice problem={unkept ?? problem} />
      <Button wide isDisabled={agreed === null || !isSeen || sha256 === undefined || isBusy} onPress={record}>
        Record the consent
      </Button>
    </Sheet>
  );
}
