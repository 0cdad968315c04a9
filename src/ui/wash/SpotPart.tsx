import { useState } from 'react';
import { type SpottingCard, stepOfCard } from '../../core/wash/index.ts';
import { agreedPlan, residuesIn, stepId } from '../../dossier/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { counted, stainWords } from '../dossier/figures.ts';
import { Part } from '../dossier/Part.tsx';
import { useForm } from '../dossier/useForm.ts';
import { Button } from '../kit/index.ts';
import { RinseSheet } from './RinseSheet.tsx';
import { SpotCardFace, stateWords } from './SpotCard.tsx';
import { SpotSheet } from './SpotSheet.tsx';
import { useCards } from './useCards.ts';

const startFirst = 'Start its step in the list above first.';

/** Why a card is no step of the plan on record, and what brings it there. */
const unplanned = ({ state, tests }: SpottingCard): string =>
  state === 'test first' || tests.some(({ isMade }) => !isMade)
    ? 'Not in the plan on record: make its tests, then put the plan on record again and ask the client.'
    : 'Not in the plan on record: put the plan on record again in the dossier, and ask the client.';

/** All cards in one look, in the order to work them. */
function CardList(props: {
  readonly cards: readonly SpottingCard[];
  readonly chosen: SpottingCard;
  readonly outcomeOf: (card: SpottingCard) => string | undefined;
  readonly onChoose: (index: number) => void;
}) {
  const { standing } = useDossier();
  return (
    <details>
      <summary>The whole order, {counted(props.cards.length, 'card')}</summary>
      <ol className="plain-list spot-list">
        {props.cards.map((card, index) => (
          <li key={card.id}>
            <button
              type="button"
              aria-current={card === props.chosen ? 'true' : undefined}
              onClick={() => props.onChoose(index)}
            >
              <span>{index + 1}</span>
              <span>
                {stainWords(standing.marks, card.stain)}
                <span className="why"> {card.agents.join(' and ') || 'dry, by hand'}</span>
              </span>
              <span className="why">{props.outcomeOf(card) ?? stateWords[card.state]}</span>
            </button>
          </li>
        ))}
      </ol>
    </details>
  );
}

function CardActs({ card }: { readonly card: SpottingCard }) {
  const { standing, visit, open, settings } = useDossier();
  const [sheet, setSheet] = useState<'outcome' | 'rinse' | null>(null);
  const { act, isBusy } = useForm(`air/${card.id}`);
  const step = stepOfCard(agreedPlan(standing)?.steps ?? [], card);
  const started = step && visit?.steps.find((one) => one.step === stepId(step))?.started;
  if (!open || visit === null) return null;
  const held = residuesIn(standing, settings).filter(({ where }) => where === card.stain);
  const isHeld = held.some(({ clears }) => clears === 'verified rinse');
  const isAiring = held.some(({ clears }) => clears === 'airing');
  const mayLog = card.agents.length === 0 ? card.state === 'ready' : started != null;
  return (
    <div className="step-buttons">
      {mayLog ? (
        <Button wide onPress={() => setSheet('outcome')}>
          Log what came of it
        </Button>
      ) : (
        card.state !== 'not on this rug' && (
          <p className="why">{step === undefined ? unplanned(card) : startFirst}</p>
        )
      )}
      {isAiring && (
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
      {cards.length > 1 && (
        <CardList cards={cards} chosen={card} outcomeOf={(one) => loggedOf(one)?.outcome} onChoose={setAt} />
      )}
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
