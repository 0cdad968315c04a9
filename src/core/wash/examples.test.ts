import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { planFactsSchema, planFactsShape } from '../../contract/planFactsShape.ts';
import { readShape } from '../../contract/readShape.ts';
import type { Method, PlanFacts } from './planFacts.ts';
import { planWash } from './planWash.ts';

const folder = new URL('../../../examples/plan/', import.meta.url);

const factsIn = (name: string): PlanFacts => {
  const read = readShape(planFactsShape, JSON.parse(readFileSync(new URL(`${name}.json`, folder), 'utf8')));
  if (!read.ok) throw new Error(`${name}: ${JSON.stringify(read.problem.facts)}`);
  const { $schema: _schema, findings, ...facts } = read.value;
  return {
    ...facts,
    ...(findings === undefined
      ? {}
      : { findings: findings.map((one) => (typeof one === 'string' ? { code: one } : one)) }),
  } as PlanFacts;
};

/** What a master would expect of each, with the rule that decides; common practice, no published source. */
const expected: Readonly<
  Record<string, { readonly method?: Method; readonly refused?: string; readonly rule: string }>
> = {
  'sound-wool-rug': { method: 'full immersion', rule: 'fibre wool' },
  'untested-colour': { method: 'dry only', rule: 'dye unknown' },
  'watched-red': { method: 'full immersion', rule: 'dye watch' },
  'controlled-red-beside-dark': { method: 'flow wash', rule: 'dye controlled' },
  'bleeding-red-beside-ivory': { method: 'low moisture', rule: 'dye do not immerse' },
  'old-colour-run-no-aim': { method: 'dry only', rule: 'R03' },
  'silk-heritage-piece': { method: 'dry only', rule: 'R33' },
  'silk-with-signatures': { method: 'full immersion', rule: 'R06' },
  'viscose-pile': { method: 'low moisture', rule: 'R05' },
  'flatweave-coffee': { method: 'full immersion', rule: 'R25' },
  'tufted-failing-latex': { method: 'low moisture', rule: 'R09' },
  'jute-backed-hooked-rug': { method: 'low moisture', rule: 'R07' },
  'dry-rot-cotton': { method: 'panel wash', rule: 'R13' },
  'moth-suspected': { refused: 'wash-blocked', rule: 'R27' },
  'nearly-nothing-known': { method: 'dry only', rule: 'R40' },
  'slow-to-dry': { method: 'dry only', rule: 'R38' },
  'bleach-and-acid': { refused: 'wash-mixture-forbidden', rule: 'mixture' },
  'silk-with-an-acid-sensitive-dye': { refused: 'wash-limits-clash', rule: 'fibre silk' },
};

describe('the worked examples give what a master would expect', () => {
  test.each(Object.entries(expected))('%s', (name, { method, refused, rule }) => {
    const plan = planWash(factsIn(name));
    if (!plan.ok) {
      expect(plan.problem.code).toBe(refused);
      expect(JSON.stringify(plan.problem.facts)).toContain(rule);
      return;
    }
    expect(plan.value.method).toBe(method);
    expect(plan.value.limits.filter(({ binding }) => binding).map((limit) => limit.rule)).toContain(rule);
  });

  test('every example has its expectation, and the schema in the folder is the one in force', () => {
    const files = readdirSync(folder).filter(
      (file) => file.endsWith('.json') && file !== 'facts.schema.json',
    );
    expect(files.map((file) => file.replace('.json', '')).sort()).toEqual(Object.keys(expected).sort());
    const kept: unknown = JSON.parse(readFileSync(new URL('facts.schema.json', folder), 'utf8'));
    expect(kept).toEqual(JSON.parse(JSON.stringify(planFactsSchema())));
  });
});
