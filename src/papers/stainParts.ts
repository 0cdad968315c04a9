import {
  type PlanStep,
  type SpottingCard,
  spottingCards,
  stepOfCard,
  unmeasuredCm2,
  type WashPlan,
} from '../core/wash/index.ts';
import { flowsOf, type Noted, planFactsOf, workEventsOf } from '../dossier/index.ts';
import { figure, shortMoment } from './measureWords.ts';
import { takeRows } from './mixWords.ts';
import type { PaperPart } from './paper.ts';
import type { PaperContext } from './paperContext.ts';
import { facts, figures, heading, list, row, table, text, words } from './parts.ts';
import { sourceWords } from './sourceWords.ts';
import { personWords } from './visitWords.ts';

/** Which mark a line is about. */
export const markWords = ({ rug }: PaperContext, mark: string | undefined): string =>
  mark === undefined ? 'whole rug' : `mark ${rug.marks.findIndex((known) => known.mark === mark) + 1}`;

/** A step's kind and, where it is for one stain, which. */
export const stepName = (context: PaperContext, { kind, stain }: PlanStep): string =>
  stain === undefined ? kind : `${kind}, ${markWords(context, stain)}`;

const range = (least: number, most: number): string =>
  least === most ? figure(least, 2) : `${figure(least, 2)} to ${figure(most, 2)}`;

const cardParts = (context: PaperContext, plan: WashPlan, card: SpottingCard): readonly PaperPart[] => {
  const { dwellMinutes = 0 } = stepOfCard(plan.steps, card) ?? card;
  const state = row('State', card.state, card.because === card.chemistry ? '' : card.because);
  const working = [
    ...(card.before.length === 0 ? [] : [row('Before it', card.before.join('\n'))]),
    ...takeRows(card, context),
    ...(card.takesMl === null
      ? []
      : [
          row(
            'The place takes up',
            context.words.measuredOut(card.takesMl.least, card.takesMl.most, 'mL'),
            card.isUnmeasured ? `not measured: reckoned as ${unmeasuredCm2} cm²` : '',
          ),
        ]),
    ...(card.targetPh === undefined ? [] : [row('pH', range(card.targetPh.least, card.targetPh.most))]),
    ...(card.agents.length === 0 ? [] : [row('At most', `${figure(card.temperatureC.most)} °C`)]),
    ...(dwellMinutes === 0 ? [] : [row('Dwell', `${figure(dwellMinutes)} min`)]),
    ...(card.tests.length === 0
      ? []
      : [
          row(
            'Spotter tests',
            card.tests
              .map(({ name, isMade }) => `${name}: ${isMade ? 'in the dossier' : 'missing'}`)
              .join('\n'),
          ),
        ]),
    ...(card.cautions.length === 0 ? [] : [row('Caution', card.cautions.join('\n'))]),
  ];
  const rows = [
    state,
    ...(card.state === 'not on this rug' ? [] : working),
    row('Never', card.never.join(', ')),
  ];
  return [
    heading(2, `${markWords(context, card.stain)}, ${card.class}: ${card.golden}`),
    text(`${card.what} ${card.chemistry}`),
    facts(...rows),
    text(`Card: ${sourceWords(card.source)}.`, 'soft'),
  ];
};

/** The spotting cards of the rug in the order to work them, and the flows it calls for. */
export function spottingParts(context: PaperContext, plan: WashPlan): readonly PaperPart[] {
  const { rug, workshop, issuedAt } = context;
  const { settings } = workshop;
  const known = planFactsOf(rug, settings, issuedAt);
  const cards = known.ok ? spottingCards(known.value, plan.bounds, workEventsOf(rug, settings)) : [];
  const flows = flowsOf(rug, { settings, now: issuedAt });
  return [
    ...(cards.length === 0
      ? []
      : [
          heading(1, 'Stains, in the golden order over the whole rug'),
          ...cards.flatMap((card) => cardParts(context, plan, card)),
        ]),
    ...flows.flatMap(({ flow, mark, steps, begun }): readonly PaperPart[] => [
      heading(1, `${flow.title}, ${markWords(context, mark)}`),
      text(flow.because),
      ...(begun === null
        ? []
        : [
            text(
              `Begun by hand ${shortMoment(begun.when, context.timeZone)}, ${personWords(context, begun.by)}${begun.where === undefined ? '' : `, ${begun.where}`}: ${begun.why}`,
              'soft',
            ),
          ]),
      list(steps.map(({ step, state }) => `${step.do}${state === 'done' ? ' (done)' : ''}`)),
      text(
        `Never: ${flow.never.join('; ')}. ${flow.cautions.join(' ')} ${sourceWords(flow.source)}.`,
        'soft',
      ),
    ]),
  ];
}

const inTime = <One extends { readonly when: string }>(some: readonly One[]): readonly One[] =>
  [...some].sort((a, b) => (a.when < b.when ? -1 : 1));

const foundWords = (entry: Noted<'FlowLogged'>): string =>
  [
    entry.choice?.replaceAll('-', ' ') ?? '',
    entry.conductivityUsPerCm === undefined ? '' : `${figure(entry.conductivityUsPerCm, 0)} µS/cm`,
    entry.supplyConductivityUsPerCm === undefined
      ? ''
      : `supply ${figure(entry.supplyConductivityUsPerCm, 0)} µS/cm`,
    entry.ph === undefined ? '' : `pH ${figure(entry.ph, 2)}`,
  ]
    .filter((one) => one !== '')
    .join(', ');

/** What was laid on each stain and what came of it, and what the flows logged. */
export function stainLogParts(context: PaperContext): readonly PaperPart[] {
  const { visit, timeZone } = context;
  const { spots, flowsBegun, flowLog } = visit;
  if (spots.length + flowsBegun.length + flowLog.length === 0) return [];
  return [
    heading(1, 'Stains'),
    table(
      [
        words('When', 1.4),
        words('Where', 0.8),
        words('What', 1.8),
        figures('pH', 0.5),
        figures('°C', 0.5),
        figures('Min', 0.5),
        words('Outcome', 0.9),
        words('Who', 1),
      ],
      spots.map((spot) => [
        shortMoment(spot.when, timeZone),
        markWords(context, spot.mark),
        spot.agents.length === 0 ? spot.golden : `${spot.golden}: ${spot.agents.join(', ')}`,
        spot.ph === undefined ? '' : figure(spot.ph, 2),
        spot.temperatureC === undefined ? '' : figure(spot.temperatureC),
        spot.minutes === undefined ? '' : figure(spot.minutes),
        spot.outcome,
        personWords(context, spot.by),
      ]),
      'No spotter was used.',
    ),
    ...(visit.airings.length === 0
      ? []
      : [
          list(
            visit.airings.map(
              (aired) =>
                `${shortMoment(aired.when, timeZone)}: solvent aired, ${markWords(context, aired.mark)}, smell: ${aired.smell} (${personWords(context, aired.by)})`,
            ),
          ),
        ]),
    table(
      [
        words('When', 1.4),
        words('Flow', 1.2),
        words('Where', 0.8),
        words('Step', 1),
        words('Found', 2),
        words('Who', 1),
      ],
      inTime([...flowsBegun, ...flowLog]).map((entry) => [
        shortMoment(entry.when, timeZone),
        entry.flow.replaceAll('-', ' '),
        entry.mark === undefined && 'where' in entry && entry.where !== undefined
          ? entry.where
          : markWords(context, entry.mark),
        'why' in entry ? 'begun by hand' : entry.step.replaceAll('-', ' '),
        'why' in entry ? entry.why : foundWords(entry),
        personWords(context, entry.by),
      ]),
      'No flow was logged.',
    ),
  ];
}
