import type { Fibre } from '../core/wash/index.ts';
import type { RugStanding } from '../dossier/index.ts';
import { leftInItParts } from './leftInItParts.ts';
import { numberedMarks, placeWords } from './markWords.ts';
import { dayOfInstant } from './measureWords.ts';
import type { PaperContext } from './paperContext.ts';
import type { PaperBody } from './paperKinds.ts';
import { facts, heading, list, notice, row, text } from './parts.ts';
import { claimAbout } from './visitWords.ts';

const every: readonly string[] = [
  'Turn it round once or twice a year, so that light and feet wear it evenly.',
  'Keep a pad under it: it saves the foundation and keeps people from slipping.',
  'Vacuum the face without a turning brush, with the pile, never over the fringe; the back now and then.',
  'Never leave it damp. A wet place is lifted, aired on both sides and dried within a day.',
  'Roll it for storage, pile inwards if the pile is short, in paper or muslin; no plastic, no fold.',
];

const moth =
  'Look at the back and under furniture twice a year for moth: bare patches, webs, grit like sand.';

const spill = (water: boolean): readonly string[] => [
  'Lift solids with a spoon. Blot with white cloth, from the rim to the middle; do not rub.',
  water
    ? 'Cold water, little of it, and blot again. Nothing else: no soap, no soda, no bleach, no steam, no heat.'
    : 'No water on this rug, and nothing else: no soap, no soda, no bleach, no steam, no heat.',
  'Note what was spilt and when, and ask us. What has dried in for a week is much harder.',
];

const ofFibre: { readonly [F in Fibre]?: string } = {
  silk: 'Silk: keep it out of strong light and from spills; even clean water can leave a mark.',
  viscose:
    'Viscose: keep it dry. Water yellows it and flattens the pile; a spill is blotted at once and left to a workshop.',
  'other regenerated': 'Regenerated fibre: keep it dry, as viscose.',
  jute: 'Jute: keep it dry; wetted, it browns.',
  sisal: 'Sisal: keep it dry; wetted, it browns and shrinks.',
  coir: 'Coir: keep it dry.',
  seagrass: 'Seagrass: keep it dry.',
  'metal thread': 'Metal thread: never wet it, never fold it.',
};

const ofConstruction: Readonly<Record<string, string>> = {
  tufted: 'Tufted: latex holds it, and latex ages. Do not fold it, hang it or lay it on floor heating.',
  flatweave: 'Flatweave: it has no pile to hide in; turn it over as well as round.',
  felt: 'Felt: no rubbing and no warm water; it shrinks.',
};

const eaten: readonly Fibre[] = ['wool', 'camel', 'goat', 'mohair', 'silk', 'unknown'];
const unknownPile = 'Its pile fibre is not known: keep it as dry as silk or viscose until it is.';

/** Whether a little cold water may be told to a layman: every fibre known, and none that water spoils. */
const bearsWater = (rug: RugStanding): boolean => {
  const pile = claimAbout(rug, 'pile')?.fibres ?? { unknown: 1 };
  const foundation = [claimAbout(rug, 'warp'), claimAbout(rug, 'weft')].map(
    (claim) => claim?.fibre ?? 'unknown',
  );
  const fibres: readonly Fibre[] = [...(Object.keys(pile) as readonly Fibre[]), ...foundation];
  return fibres.every((fibre) => fibre !== 'unknown' && fibre !== 'leather' && ofFibre[fibre] === undefined);
};

const special = (rug: RugStanding): readonly string[] => {
  const construction = claimAbout(rug, 'construction')?.construction;
  const claimed = claimAbout(rug, 'pile')?.fibres;
  const pile = Object.keys(claimed ?? {}) as readonly Fibre[];
  const foundation = (['warp', 'weft', 'backing'] as const).flatMap(
    (about) => claimAbout(rug, about)?.fibre ?? [],
  );
  const fibres = [...new Set([...pile, ...foundation])].flatMap((fibre) => ofFibre[fibre] ?? []);
  const unknown = claimed === undefined || claimed.unknown !== undefined ? [unknownPile] : [];
  return [
    ...unknown,
    ...fibres,
    ...(construction === undefined ? [] : [ofConstruction[construction] ?? []].flat()),
  ];
};

/**
 * How to live with this rug: what holds for all, what for its fibres and build, and the places to watch.
 *
 * @source common-practice
 */
export function careSheet(context: PaperContext): PaperBody {
  const { rug, visit, timeZone } = context;
  const own = special(rug);
  const watch = numberedMarks(rug).filter(({ mark }) => mark.grade >= 3 || mark.activity === 'active');
  const pile = claimAbout(rug, 'pile')?.fibres;
  // Moth eats hair and silk; a pile nobody has named may be either.
  const feedsMoth = pile === undefined || eaten.some((fibre) => pile[fibre] !== undefined);
  return {
    subtitle: 'How to keep it well until we see it again.',
    parts: [
      ...leftInItParts(context),
      ...(own.length === 0 ? [] : [heading(1, 'This rug'), list(own)]),
      ...(watch.length === 0
        ? []
        : [
            heading(1, 'Places to watch'),
            list(
              watch.map(
                ({ number, mark }) =>
                  `${number}: ${mark.word}, ${placeWords(mark)} (centimetres across and up)`,
              ),
            ),
          ]),
      heading(1, 'Every day'),
      list(feedsMoth ? [...every, moth] : every),
      heading(1, 'If something is spilt'),
      list(spill(bearsWater(rug)), true),
      notice('caution', 'Wet and heavy', [
        'A wet rug is far heavier than a dry one and the floor under it is slippery. Mind current: lift lamps and leads off a wet floor first.',
      ]),
      heading(1, 'When to come back'),
      facts(
        row('This visit', visit.received.scope.join(', '), dayOfInstant(visit.received.when, timeZone)),
        row(
          'Next look',
          'when grit shows on the back, a mark grows, or every few years',
          'common practice, no published source',
        ),
      ),
      text(
        'Advice on this sheet is common practice without a published source, for a rug in use. Pieces kept as heritage follow a conservator’s word.',
        'soft',
      ),
    ],
  };
}
