import { useMemo, useState } from 'react';
import { useSearch } from 'wouter';
import { missingDyeTests, requiredDyeTests } from '../../core/wash/index.ts';
import { latestVisit, planFactsOf, planOf } from '../../dossier/index.ts';
import { type Me, useMe, usePeople, useRecord, useRug, useSettings } from '../call/index.ts';
import { DryingView } from '../drying/DryingView.tsx';
import { Busy, Empty, ProblemNotice, useNow } from '../kit/index.ts';
import { WashView } from '../wash/WashView.tsx';
import { AskedSheet } from './AskedSheet.tsx';
import type { Ask } from './ask.ts';
import './dossier.css';
import { DossierContext, type DossierView } from './dossierView.ts';
import { Story } from './Story.tsx';

const minuteMs = 60_000;
const none: readonly never[] = [];
const nobody: Me = { person: 'nobody', name: '', roles: [] };

/** One rug's story, with the next sensible action in reach; `?at=wash` and `?at=dry` are its wet rooms. */
export function DossierPage({ rug }: { readonly rug: string }) {
  const { entries, standing, client, isLoading, problem } = useRug(rug);
  const { record } = useRecord(rug);
  const settings = useSettings();
  const me = useMe();
  const people = usePeople();
  const [asked, ask] = useState<Ask | null>(null);
  const at = new URLSearchParams(useSearch()).get('at');
  const minute = Math.floor(useNow(5000) / minuteMs);
  const now = new Date(minute * minuteMs).toISOString();

  const planning = useMemo(() => {
    const facts = planFactsOf(standing, settings, now);
    return {
      plan: planOf(standing, settings, now),
      requiredTests: facts.ok ? requiredDyeTests(facts.value) : none,
      missingTests: facts.ok ? missingDyeTests(facts.value) : none,
    };
  }, [standing, settings, now]);

  if (isLoading) return <Busy words="Opening the dossier" />;
  if (standing.opened === null)
    return (
      <div className="page">
        <ProblemNotice problem={problem} />
        {problem === null && <Empty>There is no dossier at this address.</Empty>}
      </div>
    );
  const visit = latestVisit(standing);
  const view: DossierView = {
    rug,
    entries,
    standing,
    visit,
    open: visit !== null && visit.end === null,
    client,
    settings,
    ...planning,
    isOwner: me?.roles.includes('owner') ?? false,
    asked: { person: me ?? nobody, settings, now },
    now,
    nameOf: (person) => people.find((one) => one.person === person)?.name ?? 'somebody',
    colourName: (id) => standing.colours.find(({ colour }) => colour === id)?.name ?? 'a colour',
    ask,
    record,
  };
  return (
    <DossierContext value={view}>
      <ProblemNotice problem={problem} />
      {at === 'wash' ? <WashView /> : at === 'dry' ? <DryingView /> : <Story />}
      {asked !== null && <AskedSheet asked={asked} onClose={() => ask(null)} />}
    </DossierContext>
  );
}
