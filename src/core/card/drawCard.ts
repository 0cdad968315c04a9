import geometry from '../../../data/card/geometry.json' with { type: 'json' };
import { done, type Problem, type Result } from '../../units/index.ts';
import { type CornerName, codePlace, cornerText, sheetTagMost, tagText } from './cardText.ts';

/** A shape of the card in millimetres from the window's middle, x to the right, y down. */
export type CardShape =
  | {
      readonly kind: 'rectangle';
      readonly x: number;
      readonly y: number;
      readonly width: number;
      readonly height: number;
      readonly grey: number;
    }
  | {
      readonly kind: 'outline';
      readonly points: readonly (readonly [number, number])[];
      readonly lineMm: number;
    }
  | {
      readonly kind: 'polygon';
      readonly points: readonly (readonly [number, number])[];
      readonly grey: number;
    }
  | {
      readonly kind: 'text';
      readonly x: number;
      readonly y: number;
      readonly sizeMm: number;
      readonly text: string;
    };

/** A QR code's modules, true where dark. */
export interface CodeModules {
  readonly modules: number;
  readonly dark: readonly boolean[];
}

export type CardPaper = keyof typeof geometry.papers;

export interface CardOrder {
  /** Six letters or digits, one to each printed card. */
  readonly serial: string;
  readonly tag: string | null;
  readonly draw: (text: string) => CodeModules;
}

export type CardOrderProblem =
  | Problem<'card-serial-not-usable', { readonly given: string }>
  | Problem<'card-tag-not-usable', { readonly given: string; readonly most: number }>;

export const codeShapes = (
  { modules, dark }: CodeModules,
  left: number,
  top: number,
  side: number,
): readonly CardShape[] => {
  const size = side / modules;
  const shapes: CardShape[] = [];
  for (let row = 0; row < modules; row += 1)
    for (let from = 0; from < modules; from += 1) {
      if (dark[row * modules + from] !== true) continue;
      let until = from;
      while (until < modules && dark[row * modules + until] === true) until += 1;
      shapes.push({
        kind: 'rectangle',
        x: left + from * size,
        y: top + row * size,
        width: (until - from) * size,
        height: size,
        grey: 0,
      });
      from = until;
    }
  return shapes;
};

/**
 * The 100 mm bar with its ticks.
 *
 * @param y - where it lies [mm on the sheet, from the middle]
 * @source none: layout of this project's card
 */
export function barShapes(y: number): readonly CardShape[] {
  const { length } = geometry.bar;
  const ticks = Array.from({ length: 11 }, (_, index): CardShape => {
    const height = index % 5 === 0 ? 4 : 2.5;
    return {
      kind: 'rectangle',
      x: -length / 2 + index * 10 - 0.1,
      y: y - height,
      width: 0.2,
      height,
      grey: 0,
    };
  });
  return [{ kind: 'rectangle', x: -length / 2, y: y - 0.1, width: length, height: 0.3, grey: 0 }, ...ticks];
}

/**
 * Why a serial or a tag cannot stand on a card.
 *
 * @param most - characters its code holds of a tag
 * @source none: layout of this project's card
 */
export function orderProblem(serial: string, tag: string | null, most: number): CardOrderProblem | null {
  if (!/^[0-9A-Z]{6}$/.test(serial)) return { code: 'card-serial-not-usable', facts: { given: serial } };
  if (tag !== null && (tag.length > most || !/^[0-9A-Z-]+$/.test(tag)))
    return { code: 'card-tag-not-usable', facts: { given: tag, most } };
  return null;
}

/**
 * Draws the weave card.
 *
 * @param order - serial, tag, and what draws a QR code
 * @returns shapes in millimetres; the window is to be cut out along its outline
 * @refuses card-serial-not-usable - not six capital letters or digits
 * @refuses card-tag-not-usable - not up to twelve capital letters, digits or hyphens
 * @source none: data/card/geometry.json
 */
export function drawCard({ serial, tag, draw }: CardOrder): Result<readonly CardShape[], CardOrderProblem> {
  const problem = orderProblem(serial, tag, sheetTagMost);
  if (problem !== null) return { ok: false, problem };
  const { window, code, patches, bar, arrow, tag: tagPlace } = geometry;
  const half = window / 2;
  const square = [
    [-half, -half],
    [half, -half],
    [half, half],
    [-half, half],
  ] as const;
  const middle = (patches.near + patches.far) / 2;
  const deep = patches.far - patches.near;
  const greys = patches.centres.flatMap((centre, index): readonly CardShape[] => {
    const grey = patches.levels[index] ?? 0;
    const patch = (x: number, y: number, width: number, height: number): CardShape => ({
      kind: 'rectangle',
      x: x - width / 2,
      y: y - height / 2,
      width,
      height,
      grey,
    });
    return [
      patch(centre, -middle, patches.wide, deep),
      patch(centre, middle, patches.wide, deep),
      patch(-middle, centre, deep, patches.wide),
      patch(middle, centre, deep, patches.wide),
    ];
  });
  return done([
    ...geometry.corners.flatMap(({ name }) => {
      const corner = name as CornerName;
      return codeShapes(draw(cornerText(serial, corner)), ...codePlace(corner), code.side);
    }),
    ...greys,
    { kind: 'outline', points: square, lineMm: 0.25 },
    {
      kind: 'polygon',
      grey: 0,
      points: [
        [-2, arrow.y + arrow.length / 2],
        [2, arrow.y + arrow.length / 2],
        [2, arrow.y - 2],
        [6, arrow.y - 2],
        [0, arrow.y - arrow.length / 2],
        [-6, arrow.y - 2],
        [-2, arrow.y - 2],
      ].map(([x = 0, y = 0]) => [x, y - 6] as const),
    },
    { kind: 'text', x: 10, y: arrow.y - 8, sizeMm: 4, text: 'along the warps, against the pile' },
    ...barShapes(bar.y),
    {
      kind: 'text',
      x: -bar.length / 2,
      y: bar.y + 5,
      sizeMm: 3.4,
      text: 'Measure this bar once with a steel ruler: 100 mm. Print at 100 %, no fitting to the page.',
    },
    {
      kind: 'text',
      x: -bar.length / 2,
      y: bar.y + 10,
      sizeMm: 3.4,
      text: `Weave card ${serial}. Cut the window out; lay the card flat on the back of the rug.`,
    },
    ...(tag === null
      ? []
      : [
          ...codeShapes(
            draw(tagText(tag)),
            tagPlace.x - tagPlace.side / 2,
            tagPlace.y - tagPlace.side / 2,
            tagPlace.side,
          ),
          { kind: 'text', x: tagPlace.side / 2 + 5, y: tagPlace.y, sizeMm: 6, text: tag } as const,
        ]),
  ]);
}
