import type { WashPlan } from '../core/wash/index.ts';
import { countsAs, type Noted } from '../dossier/index.ts';
import { isMeasured, measuredGrade, measuredLabel } from './measuredBlots.ts';
import type { PaperPart } from './paper.ts';
import type { PaperContext } from './paperContext.ts';
import { facts, heading, row, text } from './parts.ts';

type Verdict = WashPlan['dyes'][number];

const classWords: { readonly [S in Verdict['standing']]: string } = {
  stable: 'holds',
  watch: 'marks the cloth a little: kept cool, slightly acid and briefly wet',
  controlled: 'bleeds: treated with acid and tested again, not soaked',
  'do not immerse': 'would run: low moisture at most',
  unknown: 'not proven: no water',
};

/** The reading that decides a colour's class. */
const deciding = (
  { colour, binding }: Verdict,
  tests: readonly Noted<'DyeTested'>[],
): Noted<'DyeTested'> | undefined =>
  binding === undefined
    ? undefined
    : tests.findLast(
        (test) =>
          test.colour === colour &&
          test.liquid === binding.liquid &&
          test.side === binding.side &&
          countsAs(test) === binding.grade,
      );

function readWords(verdict: Verdict, tests: readonly Noted<'DyeTested'>[]): string {
  const { binding } = verdict;
  if (binding === undefined) return 'nothing graded yet';
  const reading = deciding(verdict, tests)?.reading;
  const grade = `grade ${binding.grade}`;
  const read =
    reading === undefined || reading.kind === 'unclear'
      ? grade
      : reading.by === 'eye'
        ? `${grade} by eye`
        : `counts as ${grade}, measured ${measuredGrade(reading)}`;
  return `decided by ${binding.liquid}, ${binding.side}: ${read}`;
}

/**
 * What the dye tests say of each colour, and by which reading.
 *
 * @param plan - the plan agreed to
 * @source cci-13-14, a test is one of many factors
 */
export function dyeGrounds({ dyes }: WashPlan, { rug }: PaperContext): readonly PaperPart[] {
  if (dyes.length === 0) return [];
  return [
    heading(1, 'What the dye tests say'),
    facts(
      ...dyes.map((verdict) =>
        row(verdict.name, classWords[verdict.standing], readWords(verdict, rug.dyeTests)),
      ),
    ),
    text(
      `${rug.dyeTests.some(isMeasured) ? `Measured: ${measuredLabel} ` : ''}A test is one of many factors: evidence, not a verdict (CCI Notes 13/14).`,
      'soft',
    ),
  ];
}
