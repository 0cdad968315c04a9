import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Link } from 'wouter';
import type { WorkshopSettings } from '../../dossier/workshopFacts.ts';
import { call, type ShownProblem, useMe, useSettings } from '../call/index.ts';
import { Button, Notice, PassageField, ProblemNotice, Section, useKept } from '../kit/index.ts';
import { PaperFields } from './PaperFields.tsx';
import { WorkFields } from './WorkFields.tsx';

type Typed = Partial<WorkshopSettings>;
const untouched: Typed = {};

/** What holds for every rug of this workshop; printed as "workshop setting" wherever it counts. */
export function WorkshopPage() {
  const me = useMe();
  const settings = useSettings();
  const cache = useQueryClient();
  const [typed, setTyped, forget] = useKept<Typed>('workshop', untouched);
  const [why, setWhy, forgetWhy] = useKept('workshop/why', '');
  const [problem, setProblem] = useState<ShownProblem | null>(null);
  const [isBusy, setBusy] = useState(false);
  const [isRecorded, setRecorded] = useState(false);
  const isOwner = me?.roles.includes('owner') === true;
  const shown: WorkshopSettings = { ...settings, ...typed };
  const change = (changed: Typed) => {
    setRecorded(false);
    setTyped((before) => ({ ...before, ...changed }));
  };
  const isFit = shown.name.trim() !== '' && /^[A-Z]{3}$/.test(shown.currency);
  const isChanged = Object.keys(typed).length > 0;
  const record = async () => {
    setBusy(true);
    const reason = why.trim() === '' ? {} : { why: why.trim() };
    // Only what was changed is sent: another tablet may have changed the rest meanwhile.
    const changed = { ...typed, ...(typed.lines === undefined ? {} : { lines: fullLines(typed.lines) }) };
    const answer = await call('/api/settings', { method: 'POST', body: { settings: changed, ...reason } });
    setBusy(false);
    if (!answer.ok) return setProblem(answer.problem);
    await cache.invalidateQueries({ queryKey: ['state'] });
    setProblem(null);
    forget();
    forgetWhy();
    setRecorded(true);
  };
  return (
    <div className="page">
      <div className="pageTop">
        <h1>Workshop</h1>
        <div className="actions">
          {isOwner ? (
            <Link className="btn ghost" href="/people">
              People
            </Link>
          ) : null}
          <Link className="btn ghost" href="/bench/card">
            Weave cards
          </Link>
          <Link className="btn ghost" href="/safekeeping">
            Safekeeping
          </Link>
        </div>
      </div>
      {isOwner ? null : (
        <Notice tone="plain" title="Only an owner changes these.">
          <p>They are shown so that you know what the plans and papers of this workshop reckon with.</p>
        </Notice>
      )}
      <form
        onSubmit={(event) => {
          event.preventDefault();
          if (isOwner && isFit && isChanged && !isBusy) record();
        }}
      >
        <fieldset className="bareSet" disabled={!isOwner}>
          <div className="cols two">
            <PaperFields settings={shown} change={change} isDisabled={!isOwner} />
            <WorkFields settings={shown} change={change} isDisabled={!isOwner} />
          </div>
          {isOwner && isChanged ? (
            <Section title="Why?">
              <PassageField
                label="Reason for the change"
                hint="Optional; kept in the workshop’s record."
                value={why}
                onChange={setWhy}
                rows={2}
              />
            </Section>
          ) : null}
        </fieldset>
        <ProblemNotice problem={problem} />
        {isRecorded ? <Notice tone="ok" title="Recorded. It holds from now on." /> : null}
        {isOwner ? (
          <div className="actions">
            <Button type="submit" isDisabled={!isFit || !isChanged || isBusy}>
              {isBusy ? 'Recording…' : 'Record the settings'}
            </Button>
            {isChanged ? (
              <Button tone="ghost" onPress={forget}>
                Take the changes back
              </Button>
            ) : null}
          </div>
        ) : null}
      </form>
    </div>
  );
}

const fullLines = (lines: readonly string[]) =>
  lines.map((line) => line.trim()).filter((line) => line !== '');
