import { type PlanStep, rescueCards, type WashPlan } from '../core/wash/index.ts';
import { shelfGaps } from '../dossier/index.ts';
import { done, type Result, refused } from '../units/index.ts';
import { limitRows } from './limitWords.ts';
import { areaWords, figure, massWords } from './measureWords.ts';
import { takeRows } from './mixWords.ts';
import { ownRuleParts } from './ownRuleParts.ts';
import type { PaperPart } from './paper.ts';
import type { PaperContext } from './paperContext.ts';
import type { PaperBody } from './paperKinds.ts';
import type { PaperHasNoGround } from './paperProblem.ts';
import { facts, heading, list, notice, row, table, text, words } from './parts.ts';
import { blockerParts, planInForce, presentPlan } from './planInForce.ts';
import { sourceWords } from './sourceWords.ts';
import { spottingParts, stepName } from './stainParts.ts';

const bandWords = (band: { readonly least: number; readonly most: number }): string =>
  band.least === band.most ? figure(band.least) : `${figure(band.least)} to ${figure(band.most)}`;

const stepRows = (step: PlanStep, context: PaperContext) =>
  [
    ...takeRows(step, context),
    step.targetPh === undefined ? null : row('pH', bandWords(step.targetPh), 'measure before use'),
    step.temperatureC === undefined ? null : row('Water', `${bandWords(step.temperatureC)} °C`),
    step.dwellMinutes === undefined ? null : row('Dwell', `${figure(step.dwellMinutes)} min, by the timer`),
    step.tools.length === 0 ? null : row('Tools', step.tools.join(', ')),
    step.protection.length === 0 ? null : row('Wear', step.protection.join(', ')),
    step.people > 1 ? row('People', String(step.people)) : null,
    step.log.length === 0 ? null : row('Write down', step.log.join(', ')),
  ].filter((one) => one !== null);

const unstopped = (sentence: string): string => sentence.replace(/\.$/, '');

/** Each rescue card with the stop conditions it is for; with a colour that acid changes, the way without acid. */
function rescueParts({ stopConditions, dyes }: WashPlan): readonly PaperPart[] {
  const sensitive = dyes.some(({ traits }) => traits.includes('acid sensitive'));
  const rescues = [...new Set(stopConditions.map(({ rescue }) => rescue))];
  return rescues.flatMap((rescue): readonly PaperPart[] => {
    const stops = stopConditions.filter((stop) => stop.rescue === rescue);
    const card = rescueCards[rescue];
    const sources = [...new Set(stops.map(({ source }) => sourceWords(source)))];
    return [
      heading(2, card?.title ?? rescue),
      facts(row('When', stops.map(({ when }) => when).join('\n'), sources.join('; '))),
      ...(card === undefined
        ? []
        : [
            list(sensitive ? (card.doAcidSensitive ?? card.do) : card.do, true),
            text(`Never: ${card.never.join(', ')}.`),
            text(`Card: ${sourceWords(card.source)}.`, 'soft'),
          ]),
    ];
  });
}

const stepParts = (step: PlanStep, plan: WashPlan, context: PaperContext): readonly PaperPart[] => {
  const stops = plan.stopConditions.filter(({ id }) => step.stopConditions.includes(id));
  const rows = stepRows(step, context);
  return [
    heading(2, `${step.order}. ${stepName(context, step)}${step.wet ? ' (wet)' : ''}`),
    text(step.what),
    ...(rows.length === 0 ? [] : [facts(...rows)]),
    text(
      `${stops.length === 0 ? '' : `Stop if: ${stops.map(({ when }) => unstopped(when)).join('; ')}. `}Step: ${sourceWords(step.source)}.`,
      'soft',
    ),
  ];
};

/** What the plan on record lacks on the shelf on the day of issue. */
const gapParts = ({ rug, shelf, issuedAt, words: said }: PaperContext): readonly PaperPart[] =>
  (shelf === undefined ? [] : shelfGaps(rug, shelf, issuedAt)).map((gap) => {
    const { title, happened, now } = said.shelfGap(gap);
    return notice('stop', title, [happened, ...now]);
  });

const basis = ({ basis: from, rulebook }: WashPlan, fingerprint: string, units: 'metric' | 'customary') =>
  facts(
    row('Plan', fingerprint, `fingerprint; rulebook ${rulebook}`),
    row('Area', areaWords(from.areaM2, units)),
    row('Dry mass', massWords(from.dryMassKg, units), from.dryMassFrom),
    row('Wet mass, at most', massWords(from.wetMassKg, units), 'plan the lifting by this'),
    row(
      'Hours until dry',
      from.expectedDryingHours === undefined ? 'not estimated yet' : figure(from.expectedDryingHours),
      from.expectedDryingHours === undefined ? '' : from.expectedDryingFrom,
    ),
  );

/**
 * What the washer does, step by step, with quantities for this rug, every limit with its reason and source,
 * and the cautions of the work.
 *
 * @refuses paper-has-no-ground - there is no wash plan
 * @source cfr-29-1910-151, eyewash; cfr-40-403-5, waste water; the rest as each line says
 */
export function workOrder(context: PaperContext): Result<PaperBody, PaperHasNoGround> {
  const force = planInForce(context);
  if (force === null) {
    const present = presentPlan(context);
    const because = present.ok ? '' : present.words.happened;
    return refused('paper-has-no-ground', { paper: 'work-order', missing: 'wash plan', because });
  }
  const { plan, fingerprint, agreed } = force;
  return done({
    subtitle: `${plan.method}, ${plan.steps.length} steps, rulebook ${plan.rulebook}.`,
    parts: [
      ...blockerParts(context),
      ...(agreed
        ? [notice('held', 'The client has agreed to this plan')]
        : [notice('stop', 'Not agreed', ['The client has not agreed to this plan. No wet step.'])]),
      ...gapParts(context),
      notice('caution', 'Before you start', plan.cautions),
      ...plan.overridden.map(({ rule, reason }) =>
        notice('caution', `Rule ${rule} is set aside by the owner`, [reason]),
      ),
      heading(1, 'Limits of this rug'),
      text('None of these is passed. When one cannot be kept, stop and ask.', 'lead'),
      facts(...limitRows(plan, ['consents', 'signOffs'])),
      ...plan.narrow.map(({ axis, least, most, lowerFrom, upperFrom }) =>
        notice(
          'caution',
          `Narrow band for ${axis === 'bathPh' ? 'the bath' : 'the last rinse'}: pH ${bandWords({ least, most })}`,
          [`Lower end from ${lowerFrom}, upper end from ${upperFrom}. Measure often.`],
        ),
      ),
      ...(plan.signOffs.length === 0
        ? []
        : [
            table(
              [words('Sign-off by', 1), words('Given', 0.6), words('Because', 3)],
              plan.signOffs.map(({ who, given, rule, because }) => [
                who,
                given ? 'yes' : 'not yet',
                `${because} (${rule})`,
              ]),
              '',
            ),
          ]),
      heading(1, 'Steps'),
      text('Quantities are for this rug. Where a range stands, start at the lower end.', 'soft'),
      ...plan.steps.flatMap((step) => stepParts(step, plan, context)),
      ...spottingParts(context, plan),
      heading(1, 'Stop conditions and what to do then'),
      ...(plan.stopConditions.length === 0
        ? [text('The plan names no stop condition: a dry method.', 'soft')]
        : rescueParts(plan)),
      heading(1, 'What this is worked out from'),
      basis(plan, fingerprint, context.workshop.settings.units),
      ...ownRuleParts(plan),
      ...(plan.loosens.length === 0
        ? []
        : [
            heading(2, 'What would loosen it'),
            list(
              plan.loosens.map(({ find, assumed }) => `${unstopped(find)} (until then taken as: ${assumed})`),
            ),
          ]),
    ],
  });
}
