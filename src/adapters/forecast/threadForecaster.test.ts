import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, expect, test } from 'vitest';
import { dryingScenario } from '../../../test/support/dryingRoom.ts';
import { threadForecaster } from './threadForecaster.ts';

// A thread that refuses with the hours it was asked for, the later question first, and falls when asked for 13.
const folder = mkdtempSync(join(tmpdir(), 'wefthouse-thread-'));
const script = join(folder, 'thread.mjs');
writeFileSync(
  script,
  `import { parentPort } from 'node:worker_threads';
  const held = [];
  parentPort.on('message', ({ question, scenario }) => {
    if (scenario.hours === 13) process.exit(7);
    held.unshift({ question, answer: { ok: false, problem: { code: 'told', facts: { hours: scenario.hours } } } });
    if (scenario.hours !== 1) for (const one of held.splice(0)) parentPort.postMessage(one);
  });`,
);
afterAll(() => rmSync(folder, { recursive: true }));

test('each question gets its own answer, and a thread that falls is begun anew for the next', async () => {
  const forecaster = threadForecaster(pathToFileURL(script));
  const ask = (hours: number) => forecaster.forecast(dryingScenario({ hours }));
  const [first, second] = await Promise.all([ask(1), ask(2)]);
  expect(first).toMatchObject({ problem: { facts: { hours: 1 } } });
  expect(second).toMatchObject({ problem: { facts: { hours: 2 } } });
  await expect(ask(13)).rejects.toThrow('ended with 7');
  expect(await ask(3)).toMatchObject({ problem: { facts: { hours: 3 } } });
  await forecaster.close();
});
