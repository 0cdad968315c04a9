import { type NotedClaim, sizeOf } from '../dossier/index.ts';
import { claimWords } from './claimWords.ts';
import { knotParts } from './knotParts.ts';
import { areaWords, dayOfInstant, lengthWords, shortDay } from './measureWords.ts';
import type { PaperContext } from './paperContext.ts';
import type { PaperBody } from './paperKinds.ts';
import { type FactRow, facts, heading, list, notice, row, table, text, words } from './parts.ts';
import { photographsOf, setPhotographs } from './photographs.ts';
import { claimAbout, dossierNumber, personWords } from './visitWords.ts';

const grounds = (claim: NotedClaim, context: PaperContext): string =>
  [
    `${claim.confidence}; evidence: ${claim.evidence}`,
    ...(claim.note === undefined ? [] : [claim.note]),
    `${personWords(context, claim.by)}, ${dayOfInstant(claim.when, context.timeZone)}`,
  ].join('\n');

const claimed = (name: string, about: NotedClaim['about'], context: PaperContext): FactRow => {
  const claim = claimAbout(context.rug, about);
  return claim === undefined ? row(name, undefined) : row(name, claimWords(claim), grounds(claim, context));
};

const materials = (context: PaperContext): FactRow => {
  const parts = (['construction', 'pile', 'warp', 'weft', 'backing', 'knot', 'finish'] as const).flatMap(
    (about) => {
      const claim = claimAbout(context.rug, about);
      return claim === undefined ? [] : [`${about}: ${claimWords(claim)}`];
    },
  );
  return row(
    'Materials and techniques',
    parts.join('\n'),
    parts.length === 0 ? '' : 'Grounds for each stand below.',
  );
};

const measurements = ({ rug, workshop }: PaperContext): FactRow => {
  const size = sizeOf(rug);
  const { units } = workshop.settings;
  return row(
    'Measurements',
    size === null
      ? undefined
      : `${lengthWords(size.lengthMm, units)} long, ${lengthWords(size.widthMm, units)} wide, ${areaWords(size.areaM2, units)}`,
    size === null ? '' : 'means of three lengths and three widths, fringe apart',
  );
};

/** The fields of Object ID, in the order of the checklist, then inventory number and place of origin. */
const objectId = (context: PaperContext): readonly FactRow[] => {
  const taken = photographsOf(context, 'intake', 'work', 'after work', 'return').length;
  return [
    row('Photographs', taken === 0 ? 'none' : `${taken}, printed below`),
    claimed('Type of object', 'construction', context),
    materials(context),
    measurements(context),
    claimed('Inscriptions and markings', 'inscriptions and markings', context),
    claimed('Distinguishing features', 'distinguishing features', context),
    claimed('Title', 'title', context),
    claimed('Subject', 'subject', context),
    claimed('Date or period', 'period', context),
    claimed('Maker', 'maker', context),
    claimed('Description', 'description', context),
    row('Inventory number', `Dossier ${dossierNumber(context.rug)}`),
    claimed('Place of origin', 'origin', context),
  ];
};

/**
 * What the rug is: every field of Object ID, then each claim with its evidence and how sure it is.
 *
 * @source icom-object-id, checklist of categories
 */
export function identification(context: PaperContext): PaperBody {
  const { rug } = context;
  const uncertain = rug.claims.filter(({ confidence }) => confidence === 'possible').length;
  return {
    subtitle: 'What the rug is, why we think so, and how sure we are.',
    parts: [
      heading(1, 'Object ID'),
      facts(...objectId(context)),
      text(
        'Fields after the Object ID checklist (ICOM). “Not recorded” means nobody has said; it does not mean there is nothing.',
        'soft',
      ),
      heading(1, 'Claims and their grounds'),
      ...(uncertain === 0
        ? []
        : [
            notice('note', 'Some claims are only possible', [
              'A claim that is only possible, or rests on the client’s word alone, counts as unknown where the rug’s safety depends on it.',
            ]),
          ]),
      table(
        [
          words('About', 1),
          words('Claim', 2),
          words('Evidence', 1),
          words('How sure', 0.8),
          words('Who and when', 1.4),
        ],
        rug.claims.map((claim) => [
          claim.about,
          claim.note === undefined ? claimWords(claim) : `${claimWords(claim)}\n${claim.note}`,
          claim.evidence,
          claim.confidence,
          `${personWords(context, claim.by)}\n${shortDay(claim.when, context.timeZone)}`,
        ]),
        'Nothing has been claimed about this rug yet.',
      ),
      heading(2, 'Colours'),
      table(
        [words('Colour', 2), words('What it is', 1.2), words('Dye', 1.2)],
        rug.colours.map(({ name, kind, dyeClass }) => [name, kind, dyeClass]),
        'No colour has been named yet.',
      ),
      ...knotParts(context),
      heading(1, 'Photographs'),
      ...setPhotographs(
        photographsOf(context, 'intake', 'after work')
          .filter(({ shows }) => shows !== 'paper' && shows !== 'reading')
          .slice(0, 6),
        context,
        'No photograph is on record.',
        'plain',
      ),
      heading(1, 'What this sheet is not'),
      list([
        'It is not an appraisal and states no value.',
        'Origin, age and maker are attributions from what was seen, not proofs.',
      ]),
    ],
  };
}
