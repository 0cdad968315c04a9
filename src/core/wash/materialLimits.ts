import { type Axis, meetOn, noLimit } from './limit.ts';
import type { Construction, Fibre, PlanFacts } from './planFacts.ts';
import { constructions } from './planFacts.ts';
import {
  backingLimits,
  bastFibres,
  fibreLimits,
  proteinFibres,
  shopFacts,
  unknownFoundation,
  unknownPile,
} from './rulebook.ts';
import { limitsFrom, ruleLimits, type SourcedLimit } from './sourcedLimit.ts';

type Part = 'pile' | 'warp' | 'weft' | 'backing';

const mayBackBeWetted = (part: Part) => part === 'weft' || part === 'backing';

/** Caps of one fibre in one part of the rug, with the rules it calls up. */
function fibrePart(fibre: Fibre, part: Part): readonly SourcedLimit[] {
  const about = `${fibre} ${part}`;
  const asBacking = bastFibres.includes(fibre) && mayBackBeWetted(part);
  const row = asBacking ? backingLimits[fibre] : fibreLimits[fibre];
  const table =
    row === undefined
      ? []
      : limitsFrom(row.limits, { rule: `fibre ${fibre}`, because: row.because, source: row.source, about });
  const regenerated = fibre === 'viscose' || fibre === 'other regenerated';
  return [
    ...table,
    ...(regenerated && part === 'pile' ? ruleLimits('R05', 'pile', about) : []),
    ...(fibre === 'silk' ? ruleLimits('R06', 'silk', about) : []),
    ...(bastFibres.includes(fibre) ? ruleLimits('R07', asBacking ? 'back' : 'body', about) : []),
    ...(fibre === 'metal thread' || fibre === 'leather' ? ruleLimits('R12', 'part', about) : []),
    ...(proteinFibres.includes(fibre)
      ? [...ruleLimits('R21', 'protein', about), ...ruleLimits('R22', 'protein', about)]
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

const assumedPile = mostSensitive(
  unknownPile.map((fibre) => fibrePart(fibre, 'pile')),
  'pile fibre not known',
);

const assumedFoundation = (part: Part) =>
  mostSensitive(
    unknownFoundation.map((fibre) => fibrePart(fibre, part)),
    `${part} fibre not known`,
  );
const assumedParts = {
  warp: assumedFoundation('warp'),
  weft: assumedFoundation('weft'),
  backing: assumedFoundation('backing'),
};

function pileLimits({ pile = {} }: PlanFacts): readonly SourcedLimit[] {
  const fibres = (Object.keys(pile) as Fibre[]).filter((fibre) => (pile[fibre] ?? 0) > 0);
  const known = fibres.filter((fibre) => fibre !== 'unknown');
  const unknown = fibres.length === 0 || known.length < fibres.length;
  return [...known.flatMap((fibre) => fibrePart(fibre, 'pile')), ...(unknown ? assumedPile : [])];
}

function foundationLimits({ foundation = {}, construction }: PlanFacts): readonly SourcedLimit[] {
  const parts: readonly (keyof typeof assumedParts)[] =
    construction === 'felt'
      ? []
      : foundation.backing === undefined
        ? ['warp', 'weft']
        : ['warp', 'weft', 'backing'];
  return parts.flatMap((part) => {
    const fibre = foundation[part];
    return fibre !== undefined && fibre !== 'unknown' ? fibrePart(fibre, part) : assumedParts[part];
  });
}

function constructionPart(construction: Construction, facts: PlanFacts): readonly SourcedLimit[] {
  switch (construction) {
    case 'flatweave':
      return ruleLimits('R25', 'flatweave', 'flatweave');
    case 'felt':
      return ruleLimits('R11', 'felt', 'felt');
    case 'tufted':
      return facts.latex === 'sound'
        ? ruleLimits('R10', 'sound', 'sound latex')
        : [
            ...ruleLimits(
              'R09',
              'failing',
              facts.latex === 'failing' ? 'failing latex' : 'latex not looked at',
              facts.latex !== 'failing',
            ),
            ...ruleLimits('R10', 'sound', 'latex'),
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
function slowCotton({ foundation = {}, expectedDryingHours }: PlanFacts): readonly SourcedLimit[] {
  const { warp = 'unknown', weft = 'unknown' } = foundation;
  const cotton = [warp, weft].some((fibre) => fibre === 'cotton' || fibre === 'unknown');
  const slow = expectedDryingHours === undefined || expectedDryingHours > shopFacts.longWetHours;
  return cotton && slow
    ? ruleLimits('R08', 'slow', 'cotton foundation', expectedDryingHours === undefined)
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
