import { useMemo, useState } from 'react';
import { type SpottingCard, spottingCards } from '../../core/wash/index.ts';
import { agreedPlan, planFactsOf, residuesIn, stepId, workEventsOf } from '../../dossier/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { Part } from '../dossier/Part.tsx';
import { useForm } from '../dossier/useForm.ts';
import { Button } from '../kit/index.ts';
import { RinseSheet } from './RinseSheet.tsx';
import { SpotCardFace } from './SpotCard.tsx';
import { SpotSheet } from './SpotSheet.tsx';

/** The spotting cards of this rug, in the order to work them. */
export function useCards(): readonly SpottingCard[] {
  const { standing, settings, now, plan } = useDossier();
  return useMemo(() => {
    const facts = planFactsOf(standing, settings, now);
    const bounds = agreedPlan(standing)?.bounds ?? (plan.ok ? plan.value.bounds : null);
    return facts.ok && bounds !== null ? spottingCards(facts.value, bounds, workEventsOf(standing)) : [];
  }, [standing, settings, now, plan]);
}

function CardActs({ card }: { readonly card: SpottingCard }) {
  const { standing, visit, open } = useDossier();
  const [sheet, setSheet] = useState<'outcome' | 'rinse' | null>(null);
  const { act, isBusy } = useForm(`air/${card.id}`);
  const step = agreedPlan(standing)?.steps.find(
    (one) => one.stain === card.stain && one.what.startsWith(card.what),
  );
  const started = step && visit?.steps.find((one) => one.step === stepId(step))?.started;
  if (!open || visit === null) return null;
  const isHeld = residuesIn(standing).some(
    ({ where, clears }) => where === card.stain && clears === 'verified rinse',
  );
  const mayLog = card.agents.length === 0 ? card.state === 'ready' : started != null;
  return (
    <div className="step-buttons">
      {mayLog ? (
        <Button wide onPress={() => setSheet('outcome')}>
          Log what came of it
        </Button>
      ) : (
        <p className="why">
          {step === undefined
            ? 'Not in the plan on record: once its tests are made, put the plan on record again.'
            : 'Start its step in the list above first.'}
        </p>
      )}
      {card.agents.includes('dry solvent') && (
        <Button
          wide
          tone="ghost"
          isDisabled={isBusy}
          onPress={() => act({ type: 'SpotAired', mark: card.stain, smell: 'none' })}
        >
          Aired: no smell of solvent left
        </Button>
      )}
      {isHeld && (
        <Button wide tone="ghost" onPress={() => setSheet('rinse')}>
          Read the rinse at this place
        </Button>
      )}
      {sheet === 'outcome' && (
        <SpotSheet card={card} step={step} startedAt={started?.when} onClose={() => setSheet(null)} />
      )}
      {sheet === 'rinse' && <RinseSheet at={card.stain} onClose={() => setSheet(null)} />}
    </div>
  );
}

/** One spotting card at a time, in the golden order over the whole rug, with what came of those before. */
export function SpotPart() {
  const { visit } = useDossier();
  const cards = useCards();
  const [at, setAt] = useState<number | null>(null);
  if (cards.length === 0 || visit === null) return null;
  const loggedOf = (card: SpottingCard) =>
    visit.spots.findLast(({ mark, golden }) => mark === card.stain && golden === card.golden);
  const first = cards.findIndex((card) => loggedOf(card) === undefined && card.state !== 'not on this rug');
  const index = Math.min(at ?? Math.max(first, 0), cards.length - 1);
  const card = cards[index];
  if (card === undefined) return null;
  const logged = loggedOf(card);
  return (
    <Part id="stains" title="Stains, in the golden order">
      <p className="why" role="status">
        Card {index + 1} of {cards.length}
        {logged === undefined ? '' : `; last outcome: ${logged.outcome}`}
      </p>
      <article className="spot-card">
        <SpotCardFace card={card} />
        <CardActs key={card.id} card={card} />
      </article>
      <div className="actions">
        <Button tone="ghost" isDisabled={index === 0} onPress={() => setAt(index - 1)}>
          ‹ Card before
        </Button>
        <Button tone="ghost" isDisabled={index === cards.length - 1} onPress={() => setAt(index + 1)}>
          Next card ›
        </Button>
      </div>
    </Part>
  );
}
