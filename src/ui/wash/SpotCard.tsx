import {
  goldenOrder,
  type SpottingCard,
  stepOfCard,
  unmeasuredCm2,
  usualAmounts,
} from '../../core/wash/index.ts';
import { agreedPlan, type RugStanding } from '../../dossier/index.ts';
import { rangeText } from '../../text/amountText.ts';
import { MarkedPicture, marksAndPictures, pointsOn, surfacesOf } from '../condition/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { minutesWords, stainWords, temperatureWords } from '../dossier/figures.ts';
import { sourceWords } from '../dossier/limitWords.ts';
import { amountWords, phWords } from '../dossier/plan/StepList.tsx';
import { MixPart, useMix } from './MixPart.tsx';
import { SpotTests } from './SpotTests.tsx';

/** How near the picture of a place is. */
const zoom = 2.2;

/** The photograph around a place: far enough out to find it on the rug. */
export function PlaceCrop({ standing, mark }: { readonly standing: RugStanding; readonly mark: string }) {
  const { frame, pictures, marks } = marksAndPictures(standing);
  const own = marks.find((one) => one.mark === mark);
  const surface = surfacesOf(pictures, frame).find(
    (one) => own !== undefined && (pointsOn(own, one)?.length ?? 0) > 0,
  );
  if (own === undefined || surface === undefined) return <p className="why">Not drawn on any picture.</p>;
  const points = pointsOn(own, surface) ?? [];
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  const middle = (values: readonly number[]) => (Math.min(...values) + Math.max(...values)) / 2;
  // Near a side of the picture the place stands off the middle rather than beside an empty half.
  const reach = 0.5 / zoom;
  const across = Math.min(Math.max(middle(xs), reach), 1 - reach);
  const number = marks.indexOf(own) + 1;
  return (
    <div className="place-crop">
      <div
        style={{
          transform: `scale(${zoom}) translate(${50 - across * 100}%, ${50 - middle(ys) * 100}%)`,
        }}
      >
        <MarkedPicture
          surface={surface}
          marks={marks}
          chosen={mark}
          alt={`Mark ${number} on the ${surface.side}, in its surroundings`}
        />
      </div>
    </div>
  );
}

/** A card's state, told by a shape besides its words. */
export const stateWords = {
  ready: '● ready',
  'test first': '◆ test first',
  'clear first': '▲ clear the way first',
  'not on this rug': '▲ not on this rug',
} as const;

/** What to mix, within which limits, and what proves it. */
function Working({ card }: { readonly card: SpottingCard }) {
  const { standing, settings } = useDossier();
  const mix = useMix(card);
  const { dwellMinutes = 0 } = stepOfCard(agreedPlan(standing)?.steps ?? [], card) ?? card;
  const amounts = mix === null ? card.amounts : usualAmounts(card, mix);
  return (
    <>
      {card.before.map((line) => (
        <p key={line} className="note caution">
          <b>Before it: </b>
          {line}
        </p>
      ))}
      {amounts.map((amount) => (
        <div className="amt" key={amount.agent}>
          {amountWords(amount)} <small>{amount.agent}</small>
        </div>
      ))}
      <MixPart step={card} />
      {card.takesMl !== null && (
        <p className="why">
          The place takes up {rangeText(card.takesMl.least, card.takesMl.most, 'mL')}
          {card.isUnmeasured
            ? `; nobody measured it: reckoned as ${unmeasuredCm2} cm², a hand’s breadth`
            : ''}
          .
        </p>
      )}
      {card.agents.length > 0 && (
        <p className="aim">
          {[
            card.targetPh === undefined ? '' : phWords(card.targetPh),
            `at most ${temperatureWords(card.temperatureC.most, settings.units)}`,
            dwellMinutes === 0 ? '' : `dwell ${minutesWords(dwellMinutes)}`,
            card.strength ?? '',
          ]
            .filter((part) => part !== '')
            .join(' · ')}
        </p>
      )}
      <SpotTests card={card} />
    </>
  );
}

/** Everything a washer needs beside the rug for one treatment of one stain. */
export function SpotCardFace({ card }: { readonly card: SpottingCard }) {
  const { standing } = useDossier();
  const { stain, state, golden, because, chemistry, never, cautions } = card;
  const isForbidden = state === 'not on this rug';
  return (
    <>
      <div className="stepno">
        {stainWords(standing.marks, stain)} · {stateWords[state]}
      </div>
      <h3>{card.what}</h3>
      <p className="why">
        Place {goldenOrder.indexOf(golden) + 1} of {goldenOrder.length} in the golden order: {golden}
      </p>
      <PlaceCrop standing={standing} mark={stain} />
      {isForbidden && (
        <p className="note caution">
          <b>{because}</b>
        </p>
      )}
      <p className="why">{isForbidden || because === chemistry ? chemistry : `${because} ${chemistry}`}</p>
      {!isForbidden && <Working card={card} />}
      {never.length > 0 && (
        <p>
          <b>Never: {never.join(', ')}.</b>
        </p>
      )}
      {!isForbidden &&
        cautions.map((line) => (
          <p key={line} className="note caution">
            {line}
          </p>
        ))}
      <p className="why">
        {sourceWords(card.source)}
        {isForbidden ? '' : '; amounts start low, the meter decides'}
      </p>
    </>
  );
}
