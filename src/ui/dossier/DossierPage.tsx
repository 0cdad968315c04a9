import { useEffect, useMemo, useState } from 'react';
import { useSearch } from 'wouter';
import { missingDyeTests, requiredDyeTests } from '../../core/wash/index.ts';
import { latestVisit, nextStepOf, planFactsOf, planOf, wetBlockers } from '../../dossier/index.ts';
import {
  type Me,
  serverNow,
  useMe,
  usePeople,
  useRecord,
  useRug,
  useSettings,
  useShelf,
} from '../call/index.ts';
import { DryingView } from '../drying/DryingView.tsx';
import { Busy, Empty, ProblemNotice } from '../kit/index.ts';
import { WashView } from '../wash/WashView.tsx';
import { AskedSheet } from './AskedSheet.tsx';
import type { Ask } from './ask.ts';
import './dossier.css';
import { DossierContext, type DossierView } from './dossierView.ts';
import { Story } from './Story.tsx';

const minuteMs = 60_000;
const none: readonly never[] = [];
const nobody: Me = { person: 'nobody', name: '', roles: [] };

const minuteNow = () => new Date(Math.floor(serverNow() / minuteMs) * minuteMs).toISOString();

/** The present minute by the server's clock. A plan is worked out again each minute, not each second. */
function useMinute(): string {
  const [minute, setMinute] = useState(minuteNow);
  useEffect(() => {
    const timer = setInterval(() => setMinute(minuteNow()), 5000);
    return () => clearInterval(timer);
  }, []);
  return minute;
}

/** One rug's story, with the next sensible action in reach; `?at=wash` and `?at=dry` are its wet rooms. */
export function DossierPage({ rug }: { readonly rug: string }) {
  const { entries, standing, client, isLoading, problem } = useRug(rug);
  const { record } = useRecord(rug);
  const settings = useSettings();
  const { standing: shelf } = useShelf();
  const me = useMe();
  const people = usePeople();
  const [asked, ask] = useState<Ask | null>(null);
  const at = new URLSearchParams(useSearch()).get('at');
  const minute = useMinute();
  // What was recorded within this minute is not in the future.
  const now = new Date(Math.max(Date.parse(minute), Date.parse(entries.at(-1)?.at ?? minute))).toISOString();

  const planning = useMemo(() => {
    const facts = planFactsOf(standing, settings, now);
    return {
      plan: planOf(standing, settings, now),
      wetBlockers: wetBlockers(standing, settings, now),
      next: nextStepOf(standing, settings, now, shelf),
      requiredTests: facts.ok ? requiredDyeTests(facts.value) : none,
      missingTests: facts.ok ? missingDyeTests(facts.value) : none,
    };
  }, [standing, settings, now, shelf]);

  const by = useMemo(() => ({ person: me ?? nobody, settings, now }), [me, settings, now]);

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
    open: visit !== null && visit.end === null && visit.declined === null,
    isHere: visit !== null && visit.end === null,
    client,
    settings,
    ...planning,
    isOwner: me?.roles.includes('owner') ?? false,
    asked: by,
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
