import { threeFigures } from '../../core/weave/index.ts';
import { MeasureBar } from '../card/MeasureBar.tsx';
import { Notice, ProblemNotice } from '../kit/index.ts';
import type { CardSeen } from './weaveTalk.ts';

/** What the weave card in the picture gives, or why it gives nothing. */
export function CardNotice(props: {
  readonly card: CardSeen;
  /** The tag the picture should belong to, where one is known. */
  readonly asked: string | undefined;
  readonly onBar: (barMm: number) => void;
}) {
  const { card, asked } = props;
  if (card.ok) {
    const { form, serial, tag, measured, mmPerPx, interval95, corners } = card.value;
    const share = (100 * (interval95[1] - interval95[0])) / 2 / mmPerPx;
    return (
      <Notice
        tone={measured ? 'ok' : 'caution'}
        title={`${form === 'window' ? 'Weave card' : 'Loose pieces of card'} ${serial} found`}
      >
        <p>
          {corners.length} of its 4 codes read{tag === null ? '' : `, tag ${tag}`}. Scale ±
          {Number(share.toPrecision(2))} %, {threeFigures(1 / mmPerPx)} px to a millimetre
          {form === 'window'
            ? '; counted inside its window, the tilt of the camera taken out.'
            : ' in their middle. They serve pictures of a whole rug: for a count, come closer with the card that has a window.'}
        </p>
        {tag !== null || asked === undefined ? null : (
          <p>No tag was read on it, so nothing shows that this is a picture of rug {asked}.</p>
        )}
        {measured ? null : (
          <>
            <p>
              <b>This card was never measured.</b> A printer may have made it larger or smaller: the scale is
              unverified.
            </p>
            <details>
              <summary>Measure its bar now</summary>
              <MeasureBar serial={serial} onMeasured={props.onBar} />
            </details>
          </>
        )}
      </Notice>
    );
  }
  // A picture without a card is no fault; everything else is.
  if (card.problem.code !== 'card-not-found') return <ProblemNotice problem={card.problem} />;
  return (
    <Notice tone="plain" title="No weave card in this picture.">
      <p>
        With a card on the rug the scale and the tilt of the camera would come from the picture itself.
        Without one, say how large the picture is.
      </p>
    </Notice>
  );
}
