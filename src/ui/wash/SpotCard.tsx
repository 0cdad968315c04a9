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
  const number = marks.indexOf(own) + 1;
  return (
    <div className="place-crop">
      <div
        style={{
          transform: `scale(2.2) translate(${50 - middle(xs) * 100}%, ${50 - middle(ys) * 100}%)`,
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

/** Everything a washer needs beside the rug for one treatment of one stain. */
export function SpotCardFace({ card }: { readonly card: SpottingCard }) {
  const { standing, settings } = useDossier();
  const mix = useMix(card);
  const { dwellMinutes } = stepOfCard(agreedPlan(standing)?.steps ?? [], card) ?? card;
  const amounts = mix === null ? card.amounts : usualAmounts(card, mix);
  return (
    <>
      <div className="stepno">
        {stainWords(standing.marks, card.stain)} · {stateWords[card.state]}
      </div>
      <h3>{card.what}</h3>
      <p className="why">
        Place {goldenOrder.indexOf(card.golden) + 1} of {goldenOrder.length} in the golden order:{' '}
        {card.golden}
      </p>
      <PlaceCrop standing={standing} mark={card.stain} />
      <p className="why">
        {card.because === card.chemistry ? card.chemistry : `${card.because} ${card.chemistry}`}
      </p>
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
            (dwellMinutes ?? 0) === 0 ? '' : `dwell ${minutesWords(dwellMinutes ?? 0)}`,
            card.strength ?? '',
          ]
            .filter((part) => part !== '')
            .join(' · ')}
        </p>
      )}
      <SpotTests card={card} />
      {card.never.length > 0 && (
        <p>
          <b>Never: {card.never.join(', ')}.</b>
        </p>
      )}
      {card.cautions.map((line) => (
        <p key={line} className="note caution">
          {line}
        </p>
      ))}
      <p className="why">{sourceWords(card.source)}; amounts start low, the meter decides</p>
    </>
  );
}
