// npm start, test, demo, bench, build, dev: everything a checkout does, by Node built-ins alone.
import { mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { basename, join } from 'node:path';
import { ensureChromium } from './chromium.mjs';
import { checkNode, ensureBuilt, ensureInstalled, root, run, runBundled, runPackage } from './ground.mjs';

const reports = join(root, '.cache', 'reports');

/** Runs one vitest configuration; answers how many tests passed and failed, by vitest's own count. */
function vitest(name, config, env) {
  const report = join(reports, `${name}.json`);
  rmSync(report, { force: true });
  const code = runPackage(
    'vitest/vitest.mjs',
    ['run', '--config', config, '--reporter=default', '--reporter=json', `--outputFile.json=${report}`],
    { env: { ...process.env, ...(process.stdout.isTTY ? {} : { NO_COLOR: '1' }), ...env } },
  );
  try {
    const { numPassedTests, numFailedTests, testResults } = JSON.parse(readFileSync(report, 'utf8'));
    const brokenFiles = testResults.filter(
      (file) => file.status === 'failed' && file.assertionResults.length === 0,
    );
    const failed = numFailedTests + brokenFiles.length;
    return { passed: numPassedTests, failed: code !== 0 && failed === 0 ? 1 : failed };
  } catch {
    return { passed: 0, failed: 1 };
  }
}

const step = (script, args) => ({ passed: 0, failed: runPackage(script, args) === 0 ? 0 : 1 });

function browserJourneys() {
  const chromium = ensureChromium();
  if (chromium === undefined) return { passed: 0, failed: 1 };
  ensureBuilt('server');
  ensureBuilt('ui');
  return vitest('browser', 'vitest.browser.config.ts', { WEFTHOUSE_CHROMIUM: chromium });
}

function test() {
  mkdirSync(reports, { recursive: true });
  const stages = {
    types: () => step('typescript/bin/tsc', ['--build']),
    lint: () => step('@biomejs/biome/bin/biome', ['check', '--error-on-warnings', '.']),
    unit: () => vitest('unit', 'vitest.config.ts', {}),
    browser: browserJourneys,
  };
  const outcomes = Object.entries(stages).map(([name, stage]) => {
    console.log(`\n── ${name}`);
    const begun = performance.now();
    return { name, ...stage(), seconds: (performance.now() - begun) / 1000 };
  });
  console.log('');
  for (const { name, passed, failed, seconds } of outcomes) {
    const tests = passed + failed > 1 || passed > 0 ? `  ${passed} passed, ${failed} failed` : '';
    console.log(
      `${name.padEnd(8)}${failed === 0 ? 'sound ' : 'FAILED'}${seconds.toFixed(1).padStart(7)} s${tests}`,
    );
  }
  const sum = (count) => outcomes.reduce((total, outcome) => total + outcome[count], 0);
  console.log(`${sum('passed')} passed, ${sum('failed')} failed`);
  process.exitCode = sum('failed') === 0 ? 0 : 1;
}

/** Bundles one benchmark and runs it; without a name, all of them. */
function bench([name, ...args]) {
  const files = readdirSync(join(root, 'bench')).filter((file) => file.endsWith('.ts'));
  const known = new Map(files.map((file) => [basename(file, '.ts'), file]));
  if (name !== undefined && !known.has(name)) {
    console.error(`There is no benchmark ${name}. There are: ${[...known.keys()].join(', ')}.`);
    process.exit(2);
  }
  ensureBuilt('server');
  for (const [one, file] of known) {
    if (name !== undefined && one !== name) continue;
    console.log(`\n── ${one}`);
    const out = join(root, '.cache', 'bench', one);
    const built = runPackage('vite/bin/vite.js', [
      ...['build', '--config', 'vite.server.config.ts', '--ssr', `bench/${file}`],
      ...['--outDir', out, '--emptyOutDir', '--logLevel', 'warn'],
    ]);
    const bundle = join(out, `${basename(file, '.ts')}.js`);
    const code = built === 0 ? run(process.execPath, ['--expose-gc', bundle, ...args]) : built;
    if (code !== 0) process.exitCode = code;
  }
}

/** The server on a store of its own under .cache, and the screens rebuilt in the browser as they are typed. */
async function dev(args) {
  ensureBuilt('server');
  ensureBuilt('ui');
  const { createServer } = await import('vite');
  const proxied = { target: 'http://localhost:8470', changeOrigin: false };
  const proxy = { '/api': proxied, '/problems': proxied };
  const screens = await createServer({ configFile: join(root, 'vite.config.ts'), server: { proxy } });
  await screens.listen();
  screens.printUrls();
  await runBundled(['serve', '--data', join(root, '.cache', 'dev'), '--port', '8470', ...args]);
  await screens.close();
}

const doings = {
  start: async (args) => {
    ensureBuilt('server');
    ensureBuilt('ui');
    await runBundled(['serve', ...args]);
  },
  demo: async (args) => {
    ensureBuilt('server');
    ensureBuilt('ui');
    await runBundled(['demo', ...args]);
  },
  build: () => {
    ensureBuilt('server');
    ensureBuilt('ui');
  },
  test,
  bench,
  dev,
};

const [name, ...args] = process.argv.slice(2);
const doing = doings[name];
if (doing === undefined) {
  console.error(`node scripts/run.mjs ${Object.keys(doings).join('|')}`);
  process.exit(2);
}
checkNode();
ensureInstalled();
await doing(args);
