import geometry from '../../../data/card/geometry.json' with { type: 'json' };

export type CornerName = 'A' | 'B' | 'C' | 'D';

/** What a code of the card says. */
export type CardText =
  | { readonly kind: 'corner'; readonly serial: string; readonly corner: CornerName }
  /** One of four loose pieces that lie at the corners of a whole rug. */
  | {
      readonly kind: 'loose';
      readonly serial: string;
      readonly corner: CornerName;
      readonly tag: string | null;
    }
  | { readonly kind: 'tag'; readonly tag: string };

const cornerForm = /^WEFT-([0-9A-Z]{6})-([ABCD])$/;
const looseForm = /^WEFTL-([0-9A-Z]{6})-([ABCD])$/;
/** Short, so that a piece's code stays as coarse with a tag as without. */
const taggedLooseForm = /^WL([0-9A-Z]{6})([ABCD])([0-9A-Z-]{1,7})$/;
/** What a loose piece's code holds of a tag beside serial and corner. */
export const looseTagMost = 7;
/** What the sheet's own code of the tag holds. */
export const sheetTagMost = 12;
const tagForm = /^WEFT-TAG-([0-9A-Z-]{1,12})$/;

/**
 * The text of a corner's code.
 *
 * @source none: form of this project
 */
export const cornerText = (serial: string, corner: CornerName): string => `WEFT-${serial}-${corner}`;

/**
 * The text of a loose piece's code.
 *
 * @param tag - of the rug, at most seven characters; null for pieces that serve any rug
 * @source none: form of this project
 */
export const looseText = (serial: string, corner: CornerName, tag: string | null): string =>
  tag === null ? `WEFTL-${serial}-${corner}` : `WL${serial}${corner}${tag}`;

/**
 * The text of the tag's code.
 *
 * @source none: form of this project
 */
export const tagText = (tag: string): string => `WEFT-TAG-${tag}`;

/**
 * Reads the text of a code.
 *
 * @returns null for a code that is none of the card's
 * @source none: form of this project
 */
export function readCardText(text: string): CardText | null {
  for (const [kind, form] of [
    ['corner', cornerForm],
    ['loose', looseForm],
    ['loose', taggedLooseForm],
  ] as const) {
    const [, serial, corner, tag = null] = form.exec(text) ?? [];
    if (serial !== undefined && (corner === 'A' || corner === 'B' || corner === 'C' || corner === 'D'))
      return kind === 'loose' ? { kind, serial, corner, tag } : { kind, serial, corner };
  }
  const [, tag] = tagForm.exec(text) ?? [];
  return tag === undefined ? null : { kind: 'tag', tag };
}

/** No letters that are read as digits. */
const serialLetters = '23456789ABCDEFGHJKMNPQRSTUVWXYZ';

/**
 * A serial for a card that is about to be printed.
 *
 * @param below - a number by chance, from 0 to less than what it is given
 * @returns six letters and digits
 * @source none: form of this project
 */
export const newCardSerial = (below: (count: number) => number): string =>
  Array.from({ length: 6 }, () => serialLetters[below(serialLetters.length)]).join('');

/**
 * Upper left corner of a corner's code on the card [mm].
 *
 * @source none: data/card/geometry.json
 */
export function codePlace(corner: CornerName): readonly [x: number, y: number] {
  const found = geometry.corners.find(({ name }) => name === corner);
  if (found === undefined) throw new Error(`no corner ${corner}`);
  const { inner, side } = geometry.code;
  return [found.x > 0 ? inner : -inner - side, found.y > 0 ? inner : -inner - side];
}
