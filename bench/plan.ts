import {
  constructions,
  dyes,
  fibres,
  findingCodes,
  type PlanFacts,
  planWash,
} from '../src/core/wash/index.ts';

/** Plans every pile × warp × construction × dye × finding; no plan may use what its own limits forbid. */
function* everyRug(): Generator<PlanFacts> {
  for (const pile of fibres)
    for (const construction of constructions)
      for (const dyeClass of dyes)
        for (const code of findingCodes)
          yield {
            ...{ route: 'rug in use', construction, pile: { [pile]: 1 }, areaM2: 3, dryMassKg: 9 },
            foundation: { warp: 'cotton', weft: 'wool' },
            findings: [{ code, certainty: 'seen' }],
            colours: [{ id: 'c', name: 'the colour', kind: 'field colour', dyeClass }],
            ...{ expectedDryingHours: 20, monthsSinceWash: 100, valueAboveAuthority: false },
          };
}

const times: number[] = [];
const refusals = new Map<string, number>();
let faults = 0;
for (const facts of everyRug()) {
  const from = performance.now();
  const plan = planWash(facts);
  times.push(performance.now() - from);
  if (!plan.ok) {
    refusals.set(plan.problem.code, (refusals.get(plan.problem.code) ?? 0) + 1);
    continue;
  }
  const { steps, bounds } = plan.value;
  if (steps.some(({ agents }) => agents.some((agent) => bounds.forbiddenAgents.includes(agent)))) faults += 1;
}
times.sort((a, b) => a - b);
const at = (share: number) => (times[Math.floor(times.length * share)] ?? Number.NaN).toFixed(2);
console.log(`${times.length} rugs planned; forbidden agents used in ${faults}`);
console.log(`one plan: median ${at(0.5)} ms, p95 ${at(0.95)} ms, p99 ${at(0.99)} ms (promise: 5 ms)`);
for (const [code, count] of refusals) console.log(`refused, ${code}: ${count}`);
if (faults > 0) process.exitCode = 1;
