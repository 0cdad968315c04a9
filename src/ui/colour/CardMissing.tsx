import type { CardProblem } from '../../core/card/index.ts';
import { Notice, ProblemNotice } from '../kit/index.ts';

/** Why colours are not measured without the card. */
export function CardMissing(props: {
  readonly problem: CardProblem;
  readonly lying: 'on the cloth' | 'on the rug';
  readonly where?: 'before' | 'after';
}) {
  const { problem, lying, where } = props;
  const which = where === undefined ? 'this picture' : `the picture from ${where} the work`;
  if (problem.code !== 'card-not-found')
    return (
      <>
        {where !== undefined && <p>In {which}:</p>}
        <ProblemNotice problem={problem} />
      </>
    );
  return (
    <Notice tone="stop" title={`No weave card in ${which}.`}>
      <p>Without one the light cannot be corrected, and a shadow would be taken for a change of colour.</p>
      <p>
        <b>
          {lying === 'on the cloth'
            ? 'Lay the cloth flat under the card, so that blot and clean cloth show in its window, and take it again.'
            : 'Lay the same card flat on the rug and take it again.'}
        </b>
      </p>
    </Notice>
  );
}
