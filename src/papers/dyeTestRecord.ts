import type { Noted } from '../dossier/index.ts';
import { isMeasured, measuredBlots, measuredGrade, measuredLabel } from './measuredBlots.ts';
import { figure, momentWords, shortMoment, temperatureWords } from './measureWords.ts';
import type { PaperPart } from './paper.ts';
import type { PaperContext } from './paperContext.ts';
import type { PaperBody } from './paperKinds.ts';
import { facts, figures, heading, list, notice, row, table, text, words } from './parts.ts';
import { setPhotographs } from './photographs.ts';
import { presentPlan } from './planInForce.ts';
import { personWords } from './visitWords.ts';

/** How a blot is labelled wherever it is printed: it is no result of a standard fastness test. */
const eyeLabel = 'Blot, graded by eye on the ISO 105-A03 grey scale.';

const conditions = (test: Noted<'DyeTested'>): string =>
  [
    ...(test.agents === undefined ? [] : [test.agents.join(' + ')]),
    ...(test.strengthGPerL === undefined ? [] : [`${figure(test.strengthGPerL, 2)} g/L`]),
    ...(test.ph === undefined ? [] : [`pH ${figure(test.ph)}`]),
    ...(test.temperatureC === undefined ? [] : [temperatureWords(test.temperatureC)]),
    ...(test.minutes === undefined ? [] : [`${figure(test.minutes, 0)} min`]),
    ...(test.atUrinePlace === true ? ['at a marked place'] : []),
    ...(test.afterPretreatment === true ? ['after acid pre-treatment'] : []),
  ].join(', ');

const readings = ({ reading }: Noted<'DyeTested'>): readonly [string, string, string] => {
  if (reading.kind === 'unclear') return [`unclear: ${reading.why}`, '–', '–'];
  const change = reading.colourChange ?? '–';
  return reading.by === 'eye'
    ? [reading.staining, change, reading.control]
    : [measuredGrade(reading), change, '–'];
};

const verdicts = (context: PaperContext): readonly PaperPart[] => {
  const present = presentPlan(context);
  if (!present.ok)
    return [notice('stop', present.words.happened, [present.words.matters, present.words.now])];
  const { dyes, missingDyeTests } = present.plan;
  return [
    heading(1, 'What the tests say'),
    table(
      [
        words('Colour', 1.6),
        words('What it is', 1.1),
        words('Class', 1.1),
        words('Beyond that', 1.3),
        words('Decided by', 1.6),
      ],
      dyes.map(({ name, kind, standing, traits, binding }) => [
        name,
        kind,
        standing === 'unknown' ? 'unknown: no wet step' : standing,
        traits.join(', '),
        binding === undefined ? 'no reading' : `${binding.liquid}, ${binding.side}: ${binding.grade}`,
      ]),
      'No colour has been named, so no wet step may be taken.',
      'Classes are workshop settings. A colour that is untested, unclear or refused counts as unstable.',
    ),
    ...(missingDyeTests.length === 0
      ? [notice('held', 'No test is missing for what is planned now')]
      : [
          heading(2, 'Still to be tested'),
          table(
            [
              words('Colour', 1.4),
              words('Side and liquid', 1.4),
              words('Conditions', 1.6),
              words('Because', 2.2),
              words('Wet work', 0.8),
            ],
            missingDyeTests.map((test) => [
              test.name,
              `${test.side}, ${test.liquid}${test.atUrinePlace ? ', at the marked place' : ''}`,
              [
                ...(test.agents.length === 0 ? [] : [test.agents.join(' + ')]),
                ...(test.strengthGPerL === undefined ? [] : [`${figure(test.strengthGPerL, 2)} g/L`]),
                ...(test.pH === undefined ? [] : [`pH ${figure(test.pH)}`]),
                ...(test.temperatureC === undefined ? [] : [temperatureWords(test.temperatureC)]),
                ...(test.minutes === undefined ? [] : [`${figure(test.minutes, 0)} min`]),
              ].join(', '),
              test.because,
              test.blocksWetWork ? 'waits' : 'goes on, capped',
            ]),
            '',
          ),
        ]),
  ];
};

/**
 * Every blot with its liquid, conditions, side and grade, and what they amount to.
 *
 * @source iso-105-a03, the grey scale the blots are graded on by eye
 * @source cci-13-14, a test is one of many factors
 */
export function dyeTestRecord(context: PaperContext): PaperBody {
  const { rug, visit, timeZone } = context;
  const nameOf = (colour: string) => rug.colours.find((known) => known.colour === colour)?.name ?? colour;
  const labels = [
    ...(rug.dyeTests.every(isMeasured) && rug.dyeTests.length > 0 ? [] : [eyeLabel]),
    ...(rug.dyeTests.some(isMeasured) ? [measuredLabel] : []),
  ].join(' ');
  // What was measured stands with its figures; the pictures of the others stand together.
  const photos = new Set(
    rug.dyeTests.flatMap((test) => (isMeasured(test) ? test.photos.slice(0, -1) : test.photos)),
  );
  const pictures = rug.photographs.filter(({ photo }) => photos.has(photo));
  return {
    subtitle: labels,
    parts: [
      notice('note', 'How to read this', [
        `${labels} It is minutes long and cool, made to decide one wash of one rug; it is not a fastness rating of any standard.`,
        'White cotton, 500 g over 50 × 50 mm (workshop setting). Grade 5 is no stain, 1 the strongest. A control blotter that touched no rug is graded beside each.',
        'A test is one of many factors: evidence, not a verdict (CCI Notes 13/14).',
      ]),
      ...verdicts(context),
      heading(1, 'Readings'),
      table(
        [
          words('Colour', 1.3),
          words('Side', 0.7),
          words('Liquid', 1),
          words('Conditions', 1.7),
          figures('Stain', 0.8),
          figures('Colour change', 0.8),
          figures('Control', 0.75),
          words('Who and when', 1.9),
        ],
        rug.dyeTests.map((test) => [
          nameOf(test.colour),
          test.side,
          test.liquid,
          test.note === undefined ? conditions(test) : `${conditions(test)}\n${test.note}`,
          ...readings(test),
          `${personWords(context, test.by)}\n${shortMoment(test.when, timeZone)}`,
        ]),
        'No dye test is on record: every colour counts as unstable and no wet step may be taken.',
      ),
      ...measuredBlots(context, nameOf),
      ...(visit.testRefusals.length === 0
        ? []
        : [
            heading(1, 'Refused by the client'),
            facts(
              ...visit.testRefusals.map((refusal) =>
                row(
                  nameOf(refusal.colour),
                  refusal.words,
                  `${refusal.signed ? 'signed' : 'not signed'}, ${momentWords(refusal.when, timeZone)}; leaves dry methods or return`,
                ),
              ),
            ),
          ]),
      ...(pictures.length === 0 ? [] : [heading(1, 'Photographs'), ...setPhotographs(pictures, context, '')]),
      heading(1, 'Limits of these tests'),
      list([
        'A test covers a bath of the same agents at no higher strength, temperature or minutes and within 0.5 pH, for 30 days (workshop setting).',
        'It speaks for the place where it lay; dyes differ along a rug and after urine, sun or old bleed.',
      ]),
      text('Failure is grade 3 or below (workshop setting).', 'soft'),
    ],
  };
}
