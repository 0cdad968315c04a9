import { parseArgs } from 'node:util';
import { planFactsShape } from '../contract/planFactsShape.ts';
import { readShape } from '../contract/readShape.ts';
import { type PlanFacts, type PlanStep, planWash, type WashPlan } from '../core/wash/index.ts';
import { axisWords, limitRows, valueWords } from '../papers/limitWords.ts';
import { type Command, printRefusal } from './command.ts';
import { readJson, theOnly } from './readArguments.ts';

const help = `wefthouse plan FACTS.json [--json]

Plans a wash from what is known of a rug: the wettest method it bears, every limit with its reason and
source, the ordered steps with quantities, what would loosen the plan, and what its owner must agree to.
What is not known counts as its most sensitive candidate.

The form of FACTS is examples/plan/facts.schema.json; worked examples lie beside it.
Agents can burn and gas: the supplier's safety data sheet and local codes come before any plan.

--json  print the whole plan as JSON`;

type Allowed = WashPlan['loosens'][number]['allows'][number];

const allowedWords = ({ axis, from, to }: Allowed): string =>
  axis === 'steps'
    ? `then also ${String(to)}`
    : `${axisWords[axis]} ${valueWords(axis, from)} → ${valueWords(axis, to)}`;

const stepWords = (step: PlanStep): string => {
  const { order, kind, what, amounts, targetPh, temperatureC, dwellMinutes, people, protection } = step;
  const more = [
    ...amounts.map(
      ({ agent, least, most, unit }) => `${agent} ${least === most ? least : `${least} to ${most}`} ${unit}`,
    ),
    ...(targetPh === undefined ? [] : [`pH ${targetPh.least} to ${targetPh.most}`]),
    ...(temperatureC === undefined ? [] : [`${temperatureC.least} to ${temperatureC.most} °C`]),
    ...(dwellMinutes === undefined ? [] : [`${dwellMinutes} min`]),
    ...(people > 1 ? [`${people} people`] : []),
    ...protection,
  ];
  return `${String(order).padStart(3)}. ${kind}: ${what}${more.length > 0 ? `\n     ${more.join(' · ')}` : ''}`;
};

function planWords(plan: WashPlan): string {
  return [
    `Method: ${plan.method}   (rulebook ${plan.rulebook})`,
    '',
    'Limits',
    ...limitRows(plan, ['consents', 'signOffs']).map(
      ({ name, value, why }) => `  ${name}: ${value}\n     ${(why ?? '').replaceAll('\n', '\n     ')}`,
    ),
    '',
    'Steps',
    ...plan.steps.map(stepWords),
    '',
    'What would loosen it',
    ...(plan.loosens.length === 0 ? ['  nothing that is not known'] : []),
    ...plan.loosens.map(
      ({ find, favourable, allows }) => `  ${find} If ${favourable}: ${allows.map(allowedWords).join('; ')}`,
    ),
    '',
    'The client agrees to',
    ...(plan.consents.length === 0 ? ['  no particular risk'] : plan.consents.map(({ text }) => `  ${text}`)),
    ...plan.signOffs.map(
      ({ who, given, because }) => `  Sign-off by the ${who}${given ? ' (given)' : ''}: ${because}`,
    ),
    '',
    ...plan.cautions.map((caution) => `! ${caution}`),
  ].join('\n');
}

export const planCommand: Command = {
  name: 'plan',
  summary: 'plan a wash from what is known of a rug',
  help,
  async run(args, terminal) {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: { json: { type: 'boolean', default: false } },
    });
    const file = theOnly(positionals, 'Give one file of facts.');
    const read = readShape(planFactsShape, await readJson(file, terminal));
    if (!read.ok) return printRefusal(read.problem, values.json, terminal);
    const { $schema: _schema, findings, ...facts } = read.value;
    const plan = planWash({
      ...facts,
      ...(findings === undefined
        ? {}
        : {
            findings: findings.map((finding) => (typeof finding === 'string' ? { code: finding } : finding)),
          }),
    } as PlanFacts);
    if (!plan.ok) return printRefusal(plan.problem, values.json, terminal);
    terminal.print(values.json ? JSON.stringify(plan.value) : planWords(plan.value));
    return 0;
  },
};
