import cautionTable from '../../../data/wash/cautions.json' with { type: 'json' };
import fibreTable from '../../../data/wash/fibres.json' with { type: 'json' };
import greyTable from '../../../data/wash/greyScales.json' with { type: 'json' };
import mixtureTable from '../../../data/wash/mixtures.json' with { type: 'json' };
import residueTable from '../../../data/wash/residues.json' with { type: 'json' };
import stainTable from '../../../data/wash/stains.json' with { type: 'json' };
import { stainQuestions } from './differential.ts';
import { neverUsed, type Rulebook, rescueCards, riskWords, stopConditions } from './rulebook.ts';
import { figureTexts } from './ruleFigures.ts';
import type { RuleEntry } from './ruleSpot.ts';
import type { StepRow } from './ruleTables.ts';
import { countsAs, texts } from './ruleText.ts';
import { wasteWaterWords } from './wasteWater.ts';

/** Steps of one kind are told apart by their first method and what calls for them. */
export const stepName = ({ kind, methods, acts = [] }: StepRow) =>
  [kind, methods[0], ...acts.slice(0, 1)].join(', ');

const ruleSentences = ({ rules }: Rulebook) =>
  rules.flatMap(({ id, title, source, where, cases, override }) => {
    const row = { group: 'rule', row: id, title, source, ...(where === undefined ? {} : { where }) } as const;
    const silent = Object.entries(cases).filter(([, { limits }]) => Object.keys(limits).length === 0);
    return [
      ...silent.flatMap(([name, { because }]) =>
        texts(`rules/${name}`, { ...row, because }, { says: because }),
      ),
      ...texts('rules', row, { 'may be set aside': override ? 'by the owner, with a reason' : 'by nobody' }),
    ];
  });

/** A class of reading that sets no limit of its own still has its reason. */
const dyeTexts = ({ dyes }: Rulebook) =>
  Object.entries(dyes).flatMap(([row, { because, limits, source }]) =>
    Object.keys(limits).length > 0
      ? []
      : texts('dyes', { group: 'dye class', row, title: row, because, source }, { says: because }),
  );

const stainTexts = ({ stains }: Rulebook) =>
  stains.flatMap(({ class: kind, never, chemistry, note, source, treatments }) => {
    const row = { group: 'stain', row: kind, title: kind, source, because: chemistry } as const;
    return [
      ...texts('stains', row, { never, note }),
      ...treatments.flatMap(({ golden, what, agents, phase, strength, spotterTest }) =>
        texts(
          `stains/${golden}`,
          { ...row, because: what },
          {
            with: agents,
            phase,
            strength,
            'test on the dyes': spotterTest ? 'needed' : 'not needed',
          },
        ),
      ),
    ];
  });

const stepTexts = ({ steps }: Rulebook) =>
  steps.flatMap((step, index) =>
    texts(
      `steps/${index}`,
      { group: 'step', row: stepName(step), title: stepName(step), because: step.what, source: step.source },
      {
        methods: step.methods,
        'called for by': step.acts,
        'left out with': step.unlessActs,
        with: step.agents,
        tools: step.tools,
        wear: step.protection,
        'stop at': step.stops,
        log: step.log,
      },
    ),
  );

const flowTexts = ({ flows }: Rulebook) =>
  flows.flatMap(({ id, title, because, source, steps, never, cautions, stains, findings }) => {
    const row = { group: 'flow', row: id, title, source } as const;
    return [
      ...texts(
        'flows',
        { ...row, because },
        { 'for stains': stains, 'for findings': findings, never, cautions },
      ),
      ...steps.flatMap((step, index) =>
        texts(
          `flows/${step.id}`,
          { ...row, because: `${index + 1}. ${step.do}` },
          {
            log: step.log,
            answers: step.choices?.map(({ words }) => words),
          },
        ),
      ),
    ];
  });

const questionTexts = () =>
  stainQuestions.flatMap(({ id, ask, how, answers, source }) =>
    texts(
      'differential',
      { group: 'question', row: id, title: ask, because: how, source },
      Object.fromEntries(answers.map(({ words, keeps }) => [words, keeps])),
    ),
  );

const residueTexts = () =>
  residueTable.rows.flatMap(({ clears, how, agents, source }) =>
    texts(
      'residues',
      { group: 'residue', row: clears, title: clears, because: how, source },
      {
        'clears what is left of': agents,
      },
    ),
  );

const stopTexts = () => [
  ...stopConditions.flatMap(({ id, when, rescue, source }) =>
    texts(
      'stops',
      { group: 'stop condition', row: id, title: id, because: when, source },
      { 'then do': rescue },
    ),
  ),
  ...Object.entries(rescueCards).flatMap(([row, { title, source, ...card }]) =>
    texts(
      'rescue',
      { group: 'rescue card', row, title, source },
      {
        do: card.do,
        'with an acid-sensitive colour': card.doAcidSensitive,
        never: card.never,
      },
    ),
  ),
];

const { wet, dry, spotting } = cautionTable;

const cautionTexts = (book: Rulebook) =>
  texts(
    'cautions',
    {
      ...{ group: 'caution', row: 'cautions', title: cautionTable.title, source: cautionTable.source },
      where: cautionTable.where,
    },
    {
      'with water': wet,
      'without water': dry,
      ...Object.fromEntries(Object.entries(spotting).map(([name, words]) => [`spotting: ${name}`, words])),
      'waste water': wasteWaterWords(book),
      'a large rug': cautionTable.largeForItsWetMinutes,
    },
  );

const riskTexts = () =>
  Object.entries(riskWords).flatMap(([row, words]) =>
    texts(
      'risks',
      { group: 'risk', row, title: row, source: 'workshop-setting' },
      {
        'the client reads': words,
      },
    ),
  );

const greyTexts = () =>
  texts(
    'greyScales',
    {
      group: 'grey scale',
      row: 'steps',
      title: greyTable.title,
      source: greyTable.source,
      where: greyTable.where,
    },
    Object.fromEntries(
      greyTable.rows.map(({ grade, staining, change }) => [
        `grade ${grade}`,
        `staining ${staining} ${greyTable.unit}, change ${change} ${greyTable.unit}`,
      ]),
    ),
  );

const listTexts = () => [
  ...countsAs('fibre', 'which fibres count as what', {
    protein: fibreTable.protein,
    cellulosic: fibreTable.cellulosic,
    bast: fibreTable.bast,
    'an unknown pile may be': fibreTable.unknownPile,
    'an unknown foundation may be': fibreTable.unknownFoundation,
  }),
  ...countsAs('forbidden mixture', 'which agents count as what', {
    acids: mixtureTable.acids,
    sulfites: mixtureTable.sulfites,
    alkaline: mixtureTable.alkaline,
    reducers: mixtureTable.reducers,
    peroxides: mixtureTable.peroxides,
  }),
  ...countsAs('stain', 'golden order', { 'worked in this order': stainTable.goldenOrder }),
  ...neverUsed.flatMap(({ agent, because }) =>
    texts(
      'never',
      { group: 'forbidden mixture', row: agent, title: agent, because, source: 'memory' },
      {
        use: 'never',
      },
    ),
  ),
];

/**
 * What the tables say beside their numbers: texts that are part of the product and no owner changes.
 *
 * @param book - the rulebook read
 * @returns entries of a fixed form, each with its row, reason and source
 * @source none: the tables of data/wash, each row with its own source
 */
export const ruleTexts = (book: Rulebook): readonly RuleEntry[] => [
  ...ruleSentences(book),
  ...dyeTexts(book),
  ...stainTexts(book),
  ...stepTexts(book),
  ...flowTexts(book),
  ...questionTexts(),
  ...residueTexts(),
  ...stopTexts(),
  ...cautionTexts(book),
  ...riskTexts(),
  ...greyTexts(),
  ...listTexts(),
  ...figureTexts(book),
];
