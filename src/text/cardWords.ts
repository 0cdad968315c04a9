import type { CardOrderProblem, CardProblem } from '../core/card/index.ts';
import type { WordsFor } from './words.ts';

const share = (value: number): string => `${(100 * value).toFixed(1)} %`;

export const cardWords = {
  'card-not-found': ({ codes }) => ({
    happened:
      codes === 0
        ? 'No weave card was found in the picture.'
        : `${codes} codes were found in the picture, but none is a weave card's.`,
    matters: 'Without the card the picture has no scale.',
    now: 'Lay the card flat on the rug so that its four codes are sharp and wholly in the picture, or give the scale by hand.',
  }),
  'card-one-code': ({ serial, corner }) => ({
    happened: `Only one code of card ${serial} can be read (corner ${corner}).`,
    matters: 'One code alone gives the scale no better than to some per cent.',
    now: 'Uncover at least two codes, better all four, and photograph again.',
  }),
  'card-codes-disagree': ({ share: off, most }) => ({
    happened: Number.isNaN(off)
      ? 'The edges of the card’s codes cannot be made out.'
      : `The card’s codes do not fit together: they lie ${share(off)} of the card apart.`,
    matters: `A card that is bent, creased or cut up gives a wrong scale; at most ${share(most)} is taken.`,
    now: 'Press the card flat, or print a new one, and photograph again.',
  }),
  'card-stretched': ({ share: off, most }) => ({
    happened: `The card is ${share(off)} longer one way than the other.`,
    matters: `It was printed or copied with unequal scales; above ${share(most)} knots would be counted wrong along one axis.`,
    now: 'Print the card again at 100 %, without fitting to the page, and measure its bar.',
  }),
  'two-cards': ({ serials }) => ({
    happened: `More than one weave card lies in the picture (${[...new Set(serials)].join(', ')}).`,
    matters: 'It cannot be told which of them gives the scale.',
    now: 'Leave one card in the picture.',
  }),
  'card-other-tag': ({ found, expected }) => ({
    happened: `The card carries the tag ${found}, but this is rug ${expected}.`,
    matters: 'A count filed under the wrong rug is worse than none.',
    now: 'Check the rug, or print its own card.',
  }),
  'card-serial-not-usable': ({ given }) => ({
    happened: `“${given}” is no serial of a card.`,
    matters: 'The measured bar of a card is kept under its serial.',
    now: 'Give six capital letters or digits, or leave it out to have one made.',
  }),
  'card-tag-not-usable': ({ given, most }) => ({
    happened: `“${given}” cannot be put on a card as a tag.`,
    matters: 'The card’s code holds only capital letters, digits and hyphens.',
    now: `Give up to ${most} of them, or leave the tag out.`,
  }),
} satisfies WordsFor<Exclude<CardProblem, { code: 'out-of-range' }> | CardOrderProblem>;
