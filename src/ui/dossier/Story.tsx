import { useEffect } from 'react';
import { isWet, washesIn } from '../../dossier/index.ts';
import {
  CompareSection,
  DeclineSection,
  FinishSection,
  InspectSection,
  MoneySection,
  ReturnSection,
} from '../closing/index.ts';
import { StopPart } from '../wash/StopPart.tsx';
import { AgreeSection } from './agree/AgreeSection.tsx';
import { useDossier } from './dossierView.ts';
import { IdentifySection } from './identify/IdentifySection.tsx';
import { goToPart, NextStepCard } from './NextStepCard.tsx';
import { PlanSection } from './plan/PlanSection.tsx';
import { ConditionPart, PicturePart } from './story/ConditionPart.tsx';
import { CustodyPart } from './story/CustodyPart.tsx';
import { FactsPart } from './story/FactsPart.tsx';
import { Head } from './story/Head.tsx';
import { HistoryPart } from './story/HistoryPart.tsx';
import { PapersPart } from './story/PapersPart.tsx';
import { WetPart } from './story/WetPart.tsx';
import { TestSection } from './test/TestSection.tsx';
import '../wash/wash.css';

const parts = [
  ['condition', 'Condition'],
  ['identify', 'What it is'],
  ['colours', 'Colours'],
  ['test', 'Dye tests'],
  ['plan', 'Plan'],
  ['agree', 'Agreement'],
  ['money', 'Money'],
  ['wet', 'Wash and dry'],
  ['finish', 'Finish and return'],
  ['papers', 'Papers'],
  ['history', 'History'],
] as const;

/** The page that reads as the rug's story: on a phone the next step comes first. */
export function Story() {
  const { rug, visit } = useDossier();
  const washes = visit !== null && washesIn(visit);
  const isClosing = visit !== null && (visit.dryAccepted !== null || !washes) && !isWet(visit);
  useEffect(() => {
    scrollTo(0, 0);
  }, []);
  return (
    <div className="page dossier">
      <Head />
      <StopPart />
      <div className="story-cols">
        <div className="story-next">
          <NextStepCard />
          <nav className="parts-bar" aria-label="Parts of the dossier">
            {parts
              .filter(([id]) => washes || !['test', 'plan', 'agree', 'wet'].includes(id))
              .map(([id, words]) => (
                <button key={id} type="button" onClick={() => goToPart(id)}>
                  {words}
                </button>
              ))}
          </nav>
        </div>
        <div className="story-rug">
          <PicturePart />
          <FactsPart />
          <CustodyPart />
        </div>
        <div className="story-main">
          <ConditionPart />
          <IdentifySection />
          {washes && <TestSection />}
          {washes && <PlanSection />}
          <MoneySection rug={rug} />
          {washes && <AgreeSection />}
          {washes && <WetPart />}
          <details className="closing" open={isClosing}>
            <summary>Finish, inspect, hand back</summary>
            <FinishSection rug={rug} />
            <CompareSection rug={rug} />
            <InspectSection rug={rug} />
            <ReturnSection rug={rug} />
            <DeclineSection rug={rug} />
          </details>
        </div>
        <div className="story-rest">
          <PapersPart />
          <HistoryPart />
        </div>
      </div>
    </div>
  );
}
