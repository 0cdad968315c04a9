import { isOverridable, ruleIds, type WashPlan } from '../../../core/wash/index.ts';
import {
  agreedPlan,
  expectedDrying,
  forecastFreshHours,
  isForecastStale,
  planFingerprint,
} from '../../../dossier/index.ts';
import { Button, Notice, ProblemNotice, When } from '../../kit/index.ts';
import { useDossier } from '../dossierView.ts';
import { figure, massWords } from '../figures.ts';
import { Part } from '../Part.tsx';
import { LimitList } from './LimitList.tsx';
import { LoosenList } from './LoosenList.tsx';
import { PlannedBaths } from './PlannedBaths.tsx';
import { ShelfGaps } from './ShelfGaps.tsx';

import { StepList } from './StepList.tsx';

function DryingHours() {
  const { visit, open, now, ask } = useDossier();
  const expected = visit === null ? null : expectedDrying(visit);
  const isStale = visit !== null && isForecastStale(visit, now);
  const byHand = expected?.from === 'estimated by hand';
  return (
    <div className="hours">
      <div>
        <b>
          {expected === null
            ? 'Hours until dry: not said'
            : `${byHand ? '' : 'within '}${figure(expected.hours)} h from first wetting until dry`}
        </b>
        <div className="why">
          {expected === null
            ? 'Unknown counts as too long. Rules R08, R38 and R39 use it.'
            : `${expected.from}${visit?.dryingExpected?.why !== undefined && byHand ? `: ${visit.dryingExpected.why}` : ''}`}
        </div>
        {isStale ? (
          <div className="why">◆ older than {forecastFreshHours} h: it is asked again before the water</div>
        ) : null}
      </div>
      {open && (
        <Button tone="ghost" onPress={() => ask({ kind: 'drying hours' })}>
          {expected === null ? 'Forecast or enter' : 'Change'}
        </Button>
      )}
    </div>
  );
}

/** The plan on record and whether it is still the one the record supports. */
function OnRecord({ plan }: { readonly plan: WashPlan }) {
  const { standing, visit, open, nameOf, ask } = useDossier();
  const recorded = visit?.plan ?? null;
  const isCurrent = recorded !== null && recorded.fingerprint === planFingerprint(plan);
  return (
    <>
      {recorded !== null && (
        <Notice
          tone={isCurrent ? 'ok' : 'caution'}
          title={isCurrent ? 'This plan is on record.' : 'The record has moved on since the plan was agreed.'}
        >
          <p>
            {nameOf(recorded.by)}, <When at={recorded.when} />, {recorded.method}, seal{' '}
            {recorded.fingerprint.slice(0, 8)}.{' '}
            {isCurrent
              ? ''
              : `Then it was “${agreedPlan(standing)?.method ?? ''}”; below is what the record supports now.`}
          </p>
        </Notice>
      )}
      {open && !isCurrent && (
        <Button
          wide
          tone={plan.missingDyeTests.some(({ blocksWetWork }) => blocksWetWork) ? 'ghost' : 'act'}
          onPress={() => ask({ kind: 'plan on record' })}
        >
          Put this plan on record
        </Button>
      )}
    </>
  );
}

function SignOffs({ plan }: { readonly plan: WashPlan }) {
  const { open, ask } = useDossier();
  if (plan.signOffs.length === 0) return null;
  return (
    <>
      <h3>Sign-off</h3>
      <ul className="plain-list">
        {plan.signOffs.map(({ who, given, rule, because }) => (
          <li key={`${who}${rule}`} className="with-button">
            <div>
              <b>{who}</b>: {given ? '✓ given' : '▲ not yet given'}
              <div className="why">
                {because} ({rule})
              </div>
            </div>
            {open && !given && (
              <Button tone="ghost" onPress={() => ask({ kind: 'sign-off', who })}>
                Sign off
              </Button>
            )}
          </li>
        ))}
      </ul>
    </>
  );
}

function Whole({ plan }: { readonly plan: WashPlan }) {
  const { settings, open, ask } = useDossier();
  const { basis, narrow, cautions, overridden, bounds } = plan;
  return (
    <>
      <p className="plan-method">{plan.method}</p>
      <p className="why">
        the wettest method all limits still allow · for {figure(basis.areaM2, 2)} m² and{' '}
        {massWords(basis.dryMassKg, settings.units)} dry
        {basis.dryMassFrom === 'weighed' ? '' : ', an estimate: not weighed'}, about{' '}
        {massWords(Math.round(basis.wetMassKg), settings.units)} wet
      </p>
      <OnRecord plan={plan} />
      <ShelfGaps />
      <DryingHours />
      {overridden.map(({ rule, reason }) => (
        <Notice key={rule} tone="caution" title={`${rule} is overridden by the owner.`}>
          <p>
            “{reason}” The client is told of it, and it is printed on the agreement, the work order and the
            dossier.
          </p>
        </Notice>
      ))}
      {narrow.map((band) => (
        <Notice
          key={band.axis}
          tone="caution"
          title={`Narrow: pH ${figure(band.least, 2)} to ${figure(band.most, 2)}.`}
        >
          <p>
            {band.axis === 'bathPh' ? 'In the bath' : 'At the end'}: the lower side comes from{' '}
            {band.lowerFrom}, the upper from {band.upperFrom}. It can be worked, with a meter in the bath all
            the time.
          </p>
        </Notice>
      ))}
      {bounds.requiredActs.includes('agree a corrective aim') && open && (
        <Button tone="ghost" wide onPress={() => ask({ kind: 'corrective aim' })}>
          Agree what is to be put right
        </Button>
      )}
      <PlannedBaths />
      <LimitList plan={plan} />
      <LoosenList plan={plan} />
      <SignOffs plan={plan} />
      <StepList plan={plan} />
      {cautions.length > 0 && (
        <>
          <h3>Cautions</h3>
          <ul className="plain-list">
            {cautions.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </>
      )}
      <p className="why">
        Local codes, the supplier’s safety data sheet and licensed practice come before anything said here.
      </p>
    </>
  );
}

/** What the rug can bear, why, and what would loosen it. */
export function PlanSection() {
  const { plan, visit, open, isOwner, ask } = useDossier();
  const blocking = !plan.ok && plan.problem.code === 'wash-blocked' ? plan.problem.facts.rule : null;
  const overridable = ruleIds.find((rule) => rule === blocking && isOverridable(rule));
  return (
    <Part id="plan" title="What it can bear">
      {plan.ok ? (
        <Whole plan={plan.value} />
      ) : (
        <>
          <ProblemNotice problem={plan.problem} />
          <PlannedBaths />
          {open && isOwner && overridable !== undefined && (
            <Button tone="stop" wide onPress={() => ask({ kind: 'override', rule: overridable })}>
              Override {overridable}
            </Button>
          )}
          {plan.problem.code === 'size-not-measured' && open ? (
            <Button wide onPress={() => ask({ kind: 'measure' })}>
              Measure it
            </Button>
          ) : (
            <DryingHours />
          )}
          {visit?.plan != null && (
            <Notice tone="stop" title="The plan on record no longer holds.">
              <p>No wet step until the refusal above is resolved.</p>
            </Notice>
          )}
        </>
      )}
    </Part>
  );
}
