import geometry from '../../../data/card/geometry.json' with { type: 'json' };
import { done, type Result } from '../../units/index.ts';
import { type CornerName, looseTagMost, looseText } from './cardText.ts';
import {
  barShapes,
  type CardOrder,
  type CardOrderProblem,
  type CardShape,
  codeShapes,
  orderProblem,
} from './drawCard.ts';

const { loose, bar } = geometry;

/** A loose piece, drawn from its code's upper left corner [mm]. */
function pieceShapes(
  { serial, tag, draw }: CardOrder,
  corner: CornerName,
  left: number,
  top: number,
): readonly CardShape[] {
  const { patches } = loose;
  const [x0, y0] = [left + loose.left, top + loose.top];
  const text = (x: number, y: number, words: string): CardShape => ({
    kind: 'text',
    x: left + x,
    y: top + y,
    sizeMm: 3.4,
    text: words,
  });
  return [
    ...codeShapes(draw(looseText(serial, corner, tag)), left, top, loose.side),
    ...patches.centres.map(
      (centre, index): CardShape => ({
        kind: 'rectangle',
        x: left + centre - patches.wide / 2,
        y: top + patches.y,
        width: patches.wide,
        height: patches.high,
        grey: patches.levels[index] ?? 0,
      }),
    ),
    text(0, loose.words, `Piece ${corner} of card ${serial}${tag === null ? '' : `, tag ${tag}`}`),
    {
      kind: 'outline',
      lineMm: 0.25,
      points: [
        [x0, y0],
        [x0 + loose.width, y0],
        [x0 + loose.width, y0 + loose.height],
        [x0, y0 + loose.height],
      ],
    },
  ];
}

/**
 * Draws the card's second form: four loose pieces for the corners of a whole rug.
 *
 * @param order - serial, tag, and what draws a QR code
 * @returns shapes in millimetres from the sheet's middle; the pieces are to be cut apart
 * @refuses card-serial-not-usable - not six capital letters or digits
 * @refuses card-tag-not-usable - not up to seven capital letters, digits or hyphens
 * @source none: data/card/geometry.json
 */
export function drawLooseCard(order: CardOrder): Result<readonly CardShape[], CardOrderProblem> {
  const problem = orderProblem(order.serial, order.tag, looseTagMost);
  if (problem !== null) return { ok: false, problem };
  const text = (y: number, words: string): CardShape => ({
    kind: 'text',
    x: -bar.length / 2,
    y,
    sizeMm: 3.4,
    text: words,
  });
  return done([
    ...loose.places.flatMap(({ name, x, y }) =>
      pieceShapes(order, name as CornerName, x - loose.left, y - loose.top),
    ),
    ...barShapes(loose.bar),
    text(
      loose.bar + 5,
      'Measure this bar once with a steel ruler: 100 mm. Print at 100 %, no fitting to the page.',
    ),
    text(
      loose.bar + 10,
      `Loose pieces ${order.serial}. Cut them apart; lay them flat beside the rug's corners.`,
    ),
  ]);
}
