import { useMemo } from 'react';
import { evolve, planOf, type RugFactOf } from '../../../dossier/index.ts';
import { useDossier } from '../dossierView.ts';
import { NamedLines } from './NamedLines.tsx';
import { methodOnceTested } from './WhatFollows.tsx';

const turn = (from: string, to: string): string => (from === to ? `${to}, as before` : `${from} → ${to}`);

/** What a reading would make of the colour and of the plan, before it is recorded. */
export function IfRecorded({ fact }: { readonly fact: RugFactOf<'DyeTested'> }) {
  const { standing, settings, now, plan, colourName } = useDossier();
  const then = useMemo(() => {
    const entry = {
      ...{ id: 'not-recorded', stream: '', revision: standing.revision, at: now, by: '', version: 1 },
      ...{ fact, seal: standing.seal },
    };
    return planOf(evolve(standing, entry), settings, now);
  }, [standing, settings, now, fact]);
  if (!plan.ok || !then.ok) return null;
  const classOf = (of: typeof plan.value) => of.dyes.find(({ colour }) => colour === fact.colour)?.standing;
  const [hopedBefore, hoped] = [plan.value, then.value].map((of) => methodOnceTested(of) ?? of.method) as [
    string,
    string,
  ];
  const isWaiting = then.value.missingDyeTests.some(({ blocksWetWork }) => blocksWetWork);
  return (
    <div className="if-recorded">
      <h3>If this is recorded</h3>
      <NamedLines
        lines={[
          {
            name: colourName(fact.colour),
            value: turn(classOf(plan.value) ?? 'unknown', classOf(then.value) ?? 'unknown'),
          },
          { name: 'Wettest method', value: turn(plan.value.method, then.value.method) },
          ...(isWaiting
            ? [
                {
                  name: 'If the missing blots come out clean',
                  value: turn(hopedBefore, hoped),
                },
              ]
            : []),
        ]}
      />
    </div>
  );
}
