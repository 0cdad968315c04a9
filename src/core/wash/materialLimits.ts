import { type Axis, meetOn, noLimit } from './limit.ts';
import type { Construction, Fibre, PlanFacts } from './planFacts.ts';
import { constructions } from './planFacts.ts';
import {
  bastFibres,
  bookOf,
  proteinFibres,
  type Rulebook,
  unknownFoundation,
  unknownPile,
} from './rulebook.ts';
import { limitsFrom, ruleLimits, type SourcedLimit } from './sourcedLimit.ts';

type Part = 'pile' | 'warp' | 'weft' | 'backing';

const mayBackBeWetted = (part: Part) => part === 'weft' || part === 'backing';

/** Caps of one fibre in one part of the rug, with the rules it calls up. */
function fibrePart(book: Rulebook, fibre: Fibre, part: Part): readonly SourcedLimit[] {
  const about = `${fibre} ${part}`;
  const asBacking = bastFibres.includes(fibre) && mayBackBeWetted(part);
  const row = asBacking ? book.backings[fibre] : book.fibres[fibre];
  const table =
    row === undefined
      ? []
      : limitsFrom(row.limits, {
          ...{ rule: `fibre ${fibre}`, because: row.because, source: row.source, about },
          own: row.own,
        });
  const regenerated = fibre === 'viscose' || fibre === 'other regenerated';
  return [
    ...table,
    ...(regenerated && part === 'pile' ? ruleLimits(book, 'R05', 'pile', about) : []),
    ...(fibre === 'silk' ? ruleLimits(book, 'R06', 'silk', about) : []),
    ...(bastFibres.includes(fibre) ? ruleLimits(book, 'R07', asBacking ? 'back' : 'body', about) : []),
    ...(fibre === 'metal thread' || fibre === 'leather' ? ruleLimits(book, 'R12', 'part', about) : []),
    ...(proteinFibres.includes(fibre)
      ? [...ruleLimits(book, 'R21', 'protein', about), ...ruleLimits(book, 'R22', 'protein', about)]
      : []),
  ];
}

/**
 * The caps of several candidates at once: on every axis the tightest, said to be assumed.
 *
 * @source none: rule of this project; an unknown fact takes the limit of its most sensitive candidate
 */
export function mostSensitive(
  candidates: readonly (readonly SourcedLimit[])[],
  about: string,
): readonly SourcedLimit[] {
  const tightest = new Map<Axis, SourcedLimit>();
  // A list names its own candidate: acts, agents and risks of several stand beside each other.
  const lists: SourcedLimit[] = [];
  for (const limit of candidates.flat()) {
    const { axis } = limit;
    const before = tightest.get(axis);
    const met = meetOn(axis, before?.value ?? noLimit[axis], limit.value as never);
    // Where two candidates tighten a band together, the value is theirs jointly.
    const same = before !== undefined && JSON.stringify(met) === JSON.stringify(before.value);
    if (same) continue;
    const assumed = {
      ...limit,
      value: met,
      rule: 'R40',
      because: `What is not known counts as the most sensitive it could be. ${limit.because}`,
      about: `${about}, taken as ${limit.about}`,
      assumed: true,
    } as SourcedLimit;
    tightest.set(axis, assumed);
    if (Array.isArray(limit.value)) lists.push({ ...assumed, value: limit.value } as SourcedLimit);
  }
  return [...[...tightest.values()].filter(({ value }) => !Array.isArray(value)), ...lists];
}

interface AssumedParts {
  readonly pile: readonly SourcedLimit[];
  readonly warp: readonly SourcedLimit[];
  readonly weft: readonly SourcedLimit[];
  readonly backing: readonly SourcedLimit[];
}

/** What an unknown fibre counts as under a rulebook; the same for every rug, so worked out once. */
const assumedByBook = new WeakMap<Rulebook, AssumedParts>();

function assumedParts(book: Rulebook): AssumedParts {
  const known = assumedByBook.get(book);
  if (known !== undefined) return known;
  const assumed = (part: Part, candidates: readonly Fibre[]) =>
    mostSensitive(
      candidates.map((fibre) => fibrePart(book, fibre, part)),
      `${part} fibre not known`,
    );
  const made: AssumedParts = {
    pile: assumed('pile', unknownPile),
    warp: assumed('warp', unknownFoundation),
    weft: assumed('weft', unknownFoundation),
    backing: assumed('backing', unknownFoundation),
  };
  assumedByBook.set(book, made);
  return made;
}

function pileLimits(facts: PlanFacts): readonly SourcedLimit[] {
  const book = bookOf(facts);
  const { pile = {} } = facts;
  const fibres = (Object.keys(pile) as Fibre[]).filter((fibre) => (pile[fibre] ?? 0) > 0);
  const known = fibres.filter((fibre) => fibre !== 'unknown');
  const unknown = fibres.length === 0 || known.length < fibres.length;
  return [
    ...known.flatMap((fibre) => fibrePart(book, fibre, 'pile')),
    ...(unknown ? assumedParts(book).pile : []),
  ];
}

/** A tufted piece is held together by the cloth behind it: where nobody named its fibre it may be jute. */
export const hasBackingAlways = ({ construction }: PlanFacts): boolean => construction === 'tufted';

function foundationLimits(facts: PlanFacts): readonly SourcedLimit[] {
  const book = bookOf(facts);
  const { foundation = {}, construction } = facts;
  const parts: readonly Exclude<Part, 'pile'>[] =
    construction === 'felt'
      ? []
      : foundation.backing === undefined && !hasBackingAlways(facts)
        ? ['warp', 'weft']
        : ['warp', 'weft', 'backing'];
  return parts.flatMap((part) => {
    const fibre = foundation[part];
    return fibre !== undefined && fibre !== 'unknown'
      ? fibrePart(book, fibre, part)
      : assumedParts(book)[part];
  });
}

function constructionPart(construction: Construction, facts: PlanFacts): readonly SourcedLimit[] {
  const book = bookOf(facts);
  switch (construction) {
    case 'flatweave':
      return ruleLimits(book, 'R25', 'flatweave', 'flatweave');
    case 'felt':
      return ruleLimits(book, 'R11', 'felt', 'felt');
    case 'tufted':
      return facts.latex === 'sound'
        ? ruleLimits(book, 'R10', 'sound', 'sound latex')
        : [
            ...ruleLimits(
              book,
              'R09',
              'failing',
              facts.latex === 'failing' ? 'failing latex' : 'latex not looked at',
              facts.latex !== 'failing',
            ),
            ...ruleLimits(book, 'R10', 'sound', 'latex'),
          ];
    case 'knotted pile':
    case 'hooked':
    case 'machine woven':
    case 'unknown':
      return [];
  }
}

function constructionLimits(facts: PlanFacts): readonly SourcedLimit[] {
  const { construction = 'unknown' } = facts;
  if (construction !== 'unknown') return constructionPart(construction, facts);
  return mostSensitive(
    constructions.map((candidate) => constructionPart(candidate, facts)),
    'construction not known',
  );
}

/** A cotton foundation that may stay wet for more than a day. */
function slowCotton(facts: PlanFacts): readonly SourcedLimit[] {
  const book = bookOf(facts);
  const { foundation = {}, expectedDryingHours } = facts;
  const { warp = 'unknown', weft = 'unknown' } = foundation;
  const cotton = [warp, weft].some((fibre) => fibre === 'cotton' || fibre === 'unknown');
  const slow = expectedDryingHours === undefined || expectedDryingHours > book.shop.longWetHours;
  return cotton && slow
    ? ruleLimits(book, 'R08', 'slow', 'cotton foundation', expectedDryingHours === undefined)
    : [];
}

/**
 * The limits that material and construction set.
 *
 * @param facts - what is known of the rug; an unknown fibre or construction counts as its most sensitive candidate
 * @source data/wash/fibres.json and data/wash/rules.json, each row with its own source
 */
export const materialLimits = (facts: PlanFacts): readonly SourcedLimit[] => [
  ...pileLimits(facts),
  ...foundationLimits(facts),
  ...constructionLimits(facts),
  ...slowCotton(facts),
];
