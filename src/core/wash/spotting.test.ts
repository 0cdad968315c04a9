import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import stainTable from '../../../data/wash/stains.json' with { type: 'json' };
import { differentialOf, stainQuestions } from './differential.ts';
import { flowStates } from './flows.ts';
import { noLimit } from './limit.ts';
import type { Agent, PlanFacts, Stain } from './planFacts.ts';
import { planSteps } from './planSteps.ts';
import { shippedRulebook } from './rulebook.ts';
import { spottingCards } from './spottingCards.ts';
import { stainTreatments } from './stainSteps.ts';
import { stainClasses } from './vocabulary.ts';

const facts = (stains: readonly Stain[], tests: PlanFacts['dyeTests'] = []): PlanFacts => ({
  route: 'rug in use',
  areaM2: 4,
  pile: { wool: 1 },
  colours: [{ id: 'red', name: 'red', kind: 'field colour' }],
  stains,
  dyeTests: tests,
});
const proven = (agent: Agent): NonNullable<PlanFacts['dyeTests']>[number] => ({
  ...{ colour: 'red', side: 'face', liquid: 'spotter', agents: [agent], ageDays: 1, minutes: 10 },
  ...(agent === 'hydrogen peroxide' ? { pH: 6.5, strengthGPerL: 30 } : { pH: 5 }),
  ...{ outcome: 'graded', grade: '5', colourChangeGrade: '5' },
});
const wool = {
  ...noLimit,
  ...{ bathPh: { least: 4.5, most: 8.5 }, finalPh: { least: 4.5, most: 6.5 }, temperatureC: 30 },
};

const readyAgents = (rug: PlanFacts): readonly Agent[] =>
  stainTreatments(rug, wool, 'stain treatment').ready.flatMap(({ agents }) => agents);

// Order and limits: common practice, no published source.
describe('spotting cards', () => {
  test('stand in the golden order over the whole rug, not stain by stain', () => {
    const cards = spottingCards(
      facts([
        { id: 'dye', class: 'synthetic dye' },
        { id: 'wax', class: 'oil, wax or gum' },
        { id: 'wine', class: 'tannin' },
      ]),
      wool,
    );
    const places = cards.map(({ golden }) => stainTable.goldenOrder.indexOf(golden));
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(new Set(cards.map(({ stain }) => stain)).size).toBe(3);
  });
  test('a spotter that nobody tried on the colour below waits for its test and names the colour', () => {
    const [, acid] = spottingCards(facts([{ id: 'wine', class: 'tannin' }]), wool);
    expect(acid).toMatchObject({ state: 'test first', tests: [{ name: 'red', isMade: false }] });
    const [, ready] = spottingCards(facts([{ id: 'wine', class: 'tannin' }], [proven('citric acid')]), wool);
    expect(ready?.state).toBe('ready');
    // A test covers no longer than it lay: workshop setting.
    const short = { ...proven('citric acid'), minutes: 9 };
    const [, again] = spottingCards(facts([{ id: 'wine', class: 'tannin' }], [short]), wool);
    expect(again?.state).toBe('test first');
  });
  test('a colour that ran or changed under a spotter once is proven by no second reading of it', () => {
    const good = proven('citric acid');
    const wine: Stain = { id: 'wine', class: 'tannin' };
    for (const harm of [{ grade: '2' }, { colourChangeGrade: '3' }] as const) {
      const bad = { ...good, side: 'back', ageDays: 400, ...harm } as const;
      const [, card] = spottingCards(facts([wine], [bad, good]), wool);
      expect(card?.state).toBe('test first');
      expect(readyAgents(facts([wine], [bad, good]))).not.toContain('citric acid');
      // What was tried together with another agent says nothing of this one alone.
      const mixed = { ...bad, agents: ['citric acid', 'ammonia'] } as const;
      expect(spottingCards(facts([wine], [mixed, good]), wool)[1]?.state).toBe('ready');
    }
  });
  test('an acid is kept to what the rug is left with, whatever its bath was tested at, and never loosened by a risk', () => {
    const wine = facts([{ id: 'wine', class: 'tannin' }], [{ ...proven('citric acid'), pH: 5 }]);
    const acidOf = (bounds: typeof wool, rug = wine) =>
      spottingCards(rug, bounds).find(({ agents }) => agents.includes('citric acid'));
    const narrow = { ...wool, bathPh: { least: 6, most: 7 } };
    // Its own pH 4.5 to 6, within 0.5 of the pH it was tested at: workshop settings.
    expect(acidOf(narrow)).toMatchObject({ state: 'ready', targetPh: { least: 4.5, most: 5.5 } });
    expect(planSteps(wine, narrow).find(({ golden }) => golden === 'tannin')?.targetPh).toEqual(
      acidOf(narrow)?.targetPh,
    );
    const milder = { ...narrow, finalPh: { least: 5.2, most: 6.5 } };
    expect(acidOf(milder)?.targetPh).toEqual({ least: 5.2, most: 5.5 });
    // A colour that acid changes leaves no acid this strong.
    expect(acidOf({ ...narrow, finalPh: { least: 6.2, most: 6.5 } })?.state).toBe('not on this rug');
    // A bath that must stay above pH 6 still bounds what is no acid.
    const sponge = spottingCards(wine, narrow).find(({ agents }) => agents.includes('neutral detergent'));
    expect(sponge?.targetPh).toEqual({ least: 6, most: 7 });
  });
  test('a test of the spotter covers half a unit of pH about its own, no stronger liquid, and nothing where nobody noted it', () => {
    const wine: Stain = { id: 'wine', class: 'tannin' };
    const acidAt = (...at: readonly (number | undefined)[]) =>
      spottingCards(
        facts(
          [wine],
          at.map((pH) => {
            const { pH: _noted, ...test } = proven('citric acid');
            return pH === undefined ? test : { ...test, pH };
          }),
        ),
        wool,
      )[1];
    expect(acidAt(undefined)).toMatchObject({ state: 'test first', targetPh: { least: 4.5, most: 6 } });
    expect(acidAt(3.9)?.state).toBe('test first');
    expect(acidAt(6.6)?.state).toBe('test first');
    expect(acidAt(6)?.targetPh).toEqual({ least: 5.5, most: 6 });
    expect(acidAt(6, 5)?.targetPh).toEqual({ least: 4.5, most: 5.5 });
    // Two colours that were proven at pH too far apart leave nothing that both have borne.
    const two: PlanFacts = {
      ...facts(
        [wine],
        [
          { ...proven('citric acid'), pH: 4.5 },
          { ...proven('citric acid'), colour: 'blue', pH: 6 },
        ],
      ),
      colours: [
        { id: 'red', name: 'red', kind: 'field colour' },
        { id: 'blue', name: 'blue', kind: 'field colour' },
      ],
    };
    expect(spottingCards(two, wool)[1]?.because).toContain('blue');
    expect(readyAgents(two)).not.toContain('citric acid');
    const mould = (strengthGPerL: number) =>
      readyAgents(
        facts([{ id: 'm', class: 'mould stain' }], [{ ...proven('hydrogen peroxide'), strengthGPerL }]),
      );
    // At most 3 % is 30 g in a litre.
    expect(mould(30)).toContain('hydrogen peroxide');
    expect(mould(10)).not.toContain('hydrogen peroxide');
  });
  test('a stain under which no colour is named waits for its spotter, on its card and in the plan', () => {
    const bare: Stain = { id: 'wine', class: 'tannin', colours: [] };
    const rug = facts([bare], [proven('citric acid')]);
    expect(spottingCards(rug, wool)[1]?.state).toBe('test first');
    expect(readyAgents(rug)).not.toContain('citric acid');
  });
  test('an unknown stain is only lifted dry', () => {
    const cards = spottingCards(facts([{ id: 'x', class: 'unknown' }]), wool);
    expect(cards.every(({ agents }) => agents.length === 0)).toBe(true);
  });
  test('amounts grow with the place, and none is missing, negative or no number', () => {
    for (const { class: kind } of stainTable.rows) {
      const of = (areaCm2: number) =>
        spottingCards(facts([{ id: 's', class: kind as NonNullable<Stain['class']>, areaCm2 }]), wool);
      for (const [index, card] of of(100).entries()) {
        const larger = of(400)[index];
        expect(card.agents.length === 0 || card.amounts.length > 0).toBe(true);
        for (const [at, one] of card.amounts.entries()) {
          expect(one.least).toBeGreaterThanOrEqual(0);
          expect(one.most).toBeGreaterThanOrEqual(one.least);
          expect(larger?.amounts[at]?.most ?? 0).toBeGreaterThan(one.most);
        }
      }
    }
  });

  test('the flush before the wash takes what the cards of the urine places say, and a hand’s breadth where none is drawn', () => {
    const flushOf = (stains: readonly Stain[]) =>
      planSteps(facts(stains), { ...wool, requiredActs: ['urine pre-flush'] }).find(
        ({ kind }) => kind === 'urine pre-flush',
      )?.amounts;
    const { least, most } = stainTable.spotMlPerCm2;
    const millilitres = (areaCm2: number) => [{ unit: 'mL', least: areaCm2 * least, most: areaCm2 * most }];
    const place = (id: string, areaCm2: number): Stain => ({ id, class: 'urine', areaCm2 });
    expect(flushOf([place('a', 100), place('b', 300)])).toMatchObject(millilitres(400));
    expect(flushOf([{ id: 'wine', class: 'tannin', areaCm2: 900 }])).toMatchObject(
      millilitres(stainTable.unmeasuredCm2),
    );
  });
});

describe('a card looks at the whole rug', () => {
  const mouldy = (...others: readonly Stain[]) =>
    facts([{ id: 'mould', class: 'mould stain' }, ...others], [proven('hydrogen peroxide')]);
  const peroxideOf = (rug: PlanFacts) =>
    spottingCards(rug, wool).find(({ agents }) => agents.includes('hydrogen peroxide'));
  // Peroxide on iron: from memory of general chemistry (data/wash/mixtures.json).
  test('no peroxide on a rug with rust, nor on one with a stain nobody knows, and no plan of one', () => {
    expect(peroxideOf(mouldy())?.state).toBe('ready');
    expect(stainTreatments(mouldy(), wool, 'stain treatment').ready).toHaveLength(1);
    for (const kind of ['rust', 'unknown'] as const) {
      const rug = mouldy({ id: 'other', class: kind });
      expect(peroxideOf(rug)).toMatchObject({ state: 'not on this rug' });
      expect(peroxideOf(rug)?.because).toContain('holes in the fibre');
      const { ready } = stainTreatments(rug, wool, 'stain treatment');
      expect(ready.some(({ agents }) => agents.includes('hydrogen peroxide'))).toBe(false);
    }
  });
  test('what waits for its test is reckoned with: rinse and read between a reducer and peroxide', () => {
    const cards = spottingCards(mouldy({ id: 'dye', class: 'synthetic dye' }), wool);
    const [reducer, peroxide] = ['metabisulfite', 'hydrogen peroxide'].map((agent) =>
      cards.find(({ agents }) => agents.some((one) => one === agent)),
    );
    const later = cards.indexOf(reducer as never) < cards.indexOf(peroxide as never) ? peroxide : reducer;
    expect(later?.before.join(' ')).toContain('violent heat');
    expect(later?.before.join(' ')).toContain('two readings in a row');
  });
  test('water before a dry solvent that waits for its test is said on the card', () => {
    const cards = spottingCards(facts([{ id: 'wax', class: 'oil, wax or gum' }]), wool);
    const bath = cards.find(({ agents }) => agents.includes('neutral detergent'));
    expect(bath?.before.join(' ')).toContain('comes first, and waits for its test');
  });
});

describe('an unknown stain is narrowed question by question', () => {
  const answer = fc
    .constantFrom(...stainQuestions)
    .chain((question) =>
      fc.constantFrom(...question.answers).map((given) => ({ question: question.id, answer: given.id })),
    );
  test('a further answer never brings a class back', () => {
    fc.assert(
      fc.property(fc.uniqueArray(answer, { selector: ({ question }) => question }), (answers) => {
        const all = differentialOf(answers).candidates;
        const fewer = differentialOf(answers.slice(1)).candidates;
        expect(all.every((one) => fewer.includes(one))).toBe(true);
      }),
    );
  });
  test('can end at any class there is', () => {
    const [first, ...rest] = stainQuestions.map(({ id, answers }) =>
      answers.map((one) => [{ question: id, answer: one.id }]),
    );
    const every = rest.reduce(
      (paths, answers) => paths.flatMap((path) => answers.map((one) => [...path, ...one])),
      first ?? [],
    );
    const ends = new Set(every.map((answers) => differentialOf(answers).class));
    expect([...ends].sort()).toEqual([...stainClasses].sort());
  });
  test('stays unknown until light and pH were looked at', () => {
    const metal = { question: 'place', answer: 'metal' };
    const hard = { question: 'colour', answer: 'orange-brown-hard' };
    const none = { question: 'lifts', answer: 'nothing' };
    expect(differentialOf([metal, hard, none]).class).toBe('unknown');
    const lamp = { question: 'fluorescence', answer: 'darker' };
    const paper = { question: 'ph', answer: 'same' };
    const table = { question: 'place', answer: 'table' };
    const brown = { question: 'colour', answer: 'red-blue' };
    const water = { question: 'lifts', answer: 'solvent' };
    expect(differentialOf([lamp, paper, metal, hard, none]).candidates).toEqual(['rust', 'tide line']);
    expect(differentialOf([lamp, paper, table, brown, water]).class).toBe('unknown');
  });
  test('answers that contradict each other say so and name the questions', () => {
    const found = differentialOf([
      { question: 'lifts', answer: 'solvent' },
      { question: 'place', answer: 'metal' },
    ]);
    expect(found.contradicted).toEqual(['lifts', 'place']);
    expect(found.class).toBe('unknown');
  });
});

describe('a flow of its own', () => {
  const urine = shippedRulebook.flows.find(({ id }) => id === 'urine');
  if (urine === undefined) throw new Error('no urine flow');
  const ground = { isEveryTestMade: false, isAimAgreed: false, limits: shippedRulebook.residues };
  const map = { step: 'map', photos: ['a'] };
  const read = (conductivityUsPerCm: number) => ({
    ...{ step: 'flush', photos: [], conductivityUsPerCm, supplyConductivityUsPerCm: 400 },
  });
  const now = (log: Parameters<typeof flowStates>[1], of = ground) =>
    flowStates(urine, log, of).find(({ state }) => state === 'now')?.step.id;
  // Within max(20 µS/cm, 5 %) of the supply twice: workshop setting.
  test('urine is flushed until the salts stand at the supply twice in a row, then the dyes are tested again', () => {
    expect(now([])).toBe('map');
    expect(now([map, read(2100), read(415)])).toBe('flush');
    expect(now([map, read(415), read(2100)])).toBe('flush');
    expect(now([map, read(420), read(410)])).toBe('re-test');
    expect(now([map, read(420), read(410)], { ...ground, isEveryTestMade: true })).toBe('acid');
  });
  test('a smell that is still there leads back to the flush', () => {
    const tested = { ...ground, isEveryTestMade: true };
    const acid = { step: 'acid', photos: [], ph: 5 };
    const log = [map, read(410), read(410), acid, { step: 'smell', choice: 'some', photos: [] }];
    expect(now(log, tested)).toBe('flush');
    expect(now([...log.slice(0, 4), { step: 'smell', choice: 'none', photos: [] }], tested)).toBeUndefined();
  });
});
