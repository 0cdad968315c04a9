import { acidFamilies, type BathRecipe, bathPh, dose, type Solution } from '../src/core/chemistry/index.ts';

/** A bath that holds a little of every acid there is, and the dose of citric acid to hard water. */
const everything: Solution = {
  acidsMolPerL: Object.fromEntries(acidFamilies.map(({ acid }) => [acid, 0.002])),
  ...{ strongChargeMolPerL: 0.02, spectatorStrengthMolPerL: 0.01, temperatureC: 30 },
  ...{ activity: 'davies', openToAir: false },
};
const water: BathRecipe = {
  ...{ litres: 40, temperatureC: 30, alkalinityMgPerLCaCO3: 250, add: [] },
  ...{ activity: 'davies', openToAir: false },
};

function timed(name: string, runs: number, work: () => void): void {
  const times: number[] = [];
  for (let i = 0; i < runs; i++) {
    const from = performance.now();
    work();
    times.push(performance.now() - from);
  }
  times.sort((a, b) => a - b);
  const at = (share: number) => (times[Math.floor(times.length * share)] ?? Number.NaN).toFixed(3);
  console.log(`${name}: median ${at(0.5)} ms, p95 ${at(0.95)} ms`);
}

timed('pH of a bath of all acids', 500, () => bathPh(everything));
timed('dose to pH 5 with its interval', 100, () => dose(water, 'citric acid, anhydrous', 5));
