import type { CardProblem } from '../../core/card/index.ts';
import { Notice, ProblemNotice } from '../kit/index.ts';

/** Why colours are not measured without the card, said of the picture that lacks it. */
export function CardMissing(props: {
  readonly problem: CardProblem;
  readonly lying: 'on the cloth' | 'on the rug';
  /** For instance “the picture from before the test”. */
  readonly picture: string;
}) {
  const { problem, lying, picture } = props;
  if (problem.code !== 'card-not-found')
    return (
      <>
        <p>In {picture}:</p>
        <ProblemNotice problem={problem} />
      </>
    );
  return (
    <Notice tone="stop" title={`No weave card in ${picture}.`}>
      <p>Without one the light cannot be corrected, and a shadow would be taken for a change of colour.</p>
      <p>
        <b>
          {lying === 'on the cloth'
            ? 'Lay the cloth flat under the card, so that blot and clean cloth show in its window, and take it again.'
            : 'Lay the same card flat on the rug, or its four loose pieces beside the corners, and take it again.'}
        </b>
      </p>
    </Notice>
  );
}
