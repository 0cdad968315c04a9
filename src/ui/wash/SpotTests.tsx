import type { SpottingCard } from '../../core/wash/index.ts';
import type { BlotPlace } from '../dossier/ask.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { stainWords } from '../dossier/figures.ts';
import { Button } from '../kit/index.ts';
import { useCards } from './useCards.ts';

/** The blot that a spotter's test is: the spotter as it is used, at the stain's own dwell. */
const blotFor = (
  { agents, targetPh, testStrengthGPerL, temperatureC, dwellMinutes, what }: SpottingCard,
  { colour, name }: SpottingCard['tests'][number],
): BlotPlace => ({
  ...{ colour, side: 'face', liquid: 'spotter', atUrinePlace: false },
  required: {
    ...{ colour, name, side: 'face', liquid: 'spotter', atUrinePlace: false, agents },
    ...(targetPh === undefined ? {} : { pH: (targetPh.least + targetPh.most) / 2 }),
    ...(testStrengthGPerL === undefined ? {} : { strengthGPerL: testStrengthGPerL }),
    ...{ temperatureC: temperatureC.most, minutes: Math.max(dwellMinutes, 1) },
    because: `Mixed as the card says: ${what}`,
    blocksWetWork: false,
  },
});

/** Whether the dossier has each test a spotter needs, and the way to those it has not. */
export function SpotTests({ card }: { readonly card: SpottingCard }) {
  const { open, ask } = useDossier();
  if (card.tests.length === 0) return null;
  return (
    <ul className="criteria">
      {card.tests.map((test) => (
        <li key={test.colour} className={test.isMade ? 'met' : 'unmet'}>
          <span aria-hidden="true">{test.isMade ? '✓' : '▲'} </span>
          Spotter test on {test.name}: {test.isMade ? 'in the dossier' : 'missing'}
          {!test.isMade && open && card.state !== 'not on this rug' && (
            <Button
              tone="ghost"
              label={`Test it: ${card.agents.join(' and ')} on ${test.name}`}
              onPress={() => ask({ kind: 'blot', place: blotFor(card, test) })}
            >
              Test it
            </Button>
          )}
        </li>
      ))}
    </ul>
  );
}

/** Spotters that wait for a test, beside the blots of the baths. */
export function SpotTestsWaiting() {
  const waiting = useCards().filter(({ state }) => state === 'test first');
  const { standing } = useDossier();
  if (waiting.length === 0) return null;
  return (
    <>
      <h3>Spotters of the stains</h3>
      <p className="why">
        No wet step waits for these, but a spotter nobody tried on the colours under its stain is not laid.
      </p>
      {waiting.map((card) => (
        <div key={card.id}>
          <b>
            {stainWords(standing.marks, card.stain)}: {card.agents.join(' and ')}
          </b>
          <SpotTests card={card} />
        </div>
      ))}
    </>
  );
}
