import type { Problem } from '../../units/index.ts';

/** A card that belongs to another rug. */
export type OtherTag = Problem<'card-other-tag', { readonly found: string; readonly expected: string }>;

/**
 * Whether a card is another rug's; one without a tag serves any.
 *
 * @param found - on the card; null where none was read
 * @param expected - capital and small letters mean the same
 * @source none: form of this project
 */
export const otherTag = (found: string | null, expected: string | undefined): OtherTag | null =>
  expected === undefined || found === null || found === expected.toUpperCase()
    ? null
    : { code: 'card-other-tag', facts: { found, expected } };
