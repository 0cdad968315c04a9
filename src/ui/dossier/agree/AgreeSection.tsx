import type { PlanConsent } from '../../../core/wash/index.ts';
import { agreedPlan, type WetBlocker } from '../../../dossier/index.ts';
import { Button, Notice, ProblemNotice, When } from '../../kit/index.ts';
import { useDossier } from '../dossierView.ts';
import { counted, moneyWords } from '../figures.ts';
import { Part } from '../Part.tsx';

/** The risks a client agrees to: those of the plan on record, or of the plan as it stands now. */
export function useRisks(): readonly PlanConsent[] {
  const { standing, plan } = useDossier();
  return agreedPlan(standing)?.consents ?? (plan.ok ? plan.value.consents : []);
}

export function RiskList({ risks }: { readonly risks: readonly PlanConsent[] }) {
  if (risks.length === 0) return <p>No particular risk of this rug was found.</p>;
  return (
    <ol className="risks">
      {risks.map(({ risk, text, rule, about }) => (
        <li key={`${risk}${about}`}>
          {text}
          <span className="why">
            {about}
            {about === '' ? '' : ', '}
            {rule}
          </span>
        </li>
      ))}
    </ol>
  );
}

/** What voids a consent that was given, in the words of the record. */
const voiding: readonly WetBlocker['code'][] = [
  'plan-tightened',
  'consent-for-another-plan',
  'price-above-consent',
  'no-plan-possible',
];

function Given() {
  const { visit, wetBlockers, open, nameOf, ask } = useDossier();
  if (visit?.consent.kind !== 'given') return null;
  const { given } = visit.consent;
  const broken = wetBlockers.filter(({ code }) => voiding.includes(code));
  const how = given.agreed;
  return (
    <>
      <Notice
        tone={broken.length === 0 ? 'ok' : 'stop'}
        title={
          broken.length === 0 ? 'The client agreed.' : 'The client agreed, but the consent no longer holds.'
        }
      >
        <p>
          {how.how}
          {how.how === 'spoken' && `, “${how.words}”, witness ${how.witness}`}
          {how.how === 'letter or e-mail' && `, “${how.words}”`}, at most {moneyWords(given.notToExceed)} ·{' '}
          {nameOf(given.by)}, <When at={given.when} /> · {counted(given.risks.length, 'risk')} · paper{' '}
          {given.paper.slice(0, 8)}
        </p>
      </Notice>
      {broken.map((blocker) => (
        <ProblemNotice key={blocker.code} problem={blocker} />
      ))}
      {open && (
        <div className="buttons">
          {broken.length > 0 && (
            <Button onPress={() => ask({ kind: 'consent' })}>Ask for consent again</Button>
          )}
          <Button tone="ghost" onPress={() => ask({ kind: 'consent withdrawn' })}>
            The client takes it back
          </Button>
        </div>
      )}
    </>
  );
}

/** Risks in plain words, price ceiling, and how the client agreed or refused. */
export function AgreeSection() {
  const { visit, open, ask } = useDossier();
  const risks = useRisks();
  if (visit === null) return null;
  const { consent, plan, quote } = visit;
  const missing = [
    ...(plan === null ? ['put the plan on record'] : []),
    ...(quote === null ? ['quote the price with a ceiling'] : []),
  ];
  return (
    <Part id="agree" title="What the client agrees to">
      <RiskList risks={risks} />
      <p>
        <b>{quote === null ? 'No price quoted yet.' : `Not to exceed ${moneyWords(quote.notToExceed)}.`}</b>
      </p>
      <Given />
      {consent.kind === 'refused' && (
        <Notice tone="stop" title={`The client refused ${consent.refused.what}.`}>
          <p>
            “{consent.refused.words}” {consent.refused.signed ? 'Signed.' : 'Not signed.'}
          </p>
        </Notice>
      )}
      {consent.kind === 'withdrawn' && (
        <Notice tone="stop" title="The client took the consent back.">
          <p>“{consent.withdrawn.words}” No work goes on until there is a new one.</p>
        </Notice>
      )}
      {missing.length > 0 && <p className="why">Before the client can agree: {missing.join(', and ')}.</p>}
      {open && consent.kind !== 'given' && (
        <div className="buttons">
          <Button isDisabled={missing.length > 0} onPress={() => ask({ kind: 'consent' })}>
            Ask for consent
          </Button>
          <Button tone="ghost" onPress={() => ask({ kind: 'consent refused' })}>
            The client refuses
          </Button>
        </div>
      )}
    </Part>
  );
}
