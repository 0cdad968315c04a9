// What every command of this checkout stands on: packages that match the lock file, bundles that match
// the sources. Node built-ins only, since it runs before anything is installed.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = dirname(dirname(fileURLToPath(import.meta.url)));
const at = (...parts) => join(root, ...parts);
const read = (path) => (existsSync(path) ? readFileSync(path, 'utf8') : '');
const sha256 = (...texts) => createHash('sha256').update(texts.join('\0')).digest('hex');

/** Stops with a sentence when this Node is too old to run anything here. */
export function checkNode() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  if (major > 20 || (major === 20 && minor >= 19)) return;
  console.error(`Wefthouse needs Node 20.19 or newer (24 is best); this is Node ${process.versions.node}.`);
  process.exit(1);
}

/** Runs a programme with this terminal; answers its exit code. */
export function run(command, args, options = {}) {
  const { status, error } = spawnSync(command, args, { cwd: root, stdio: 'inherit', ...options });
  if (error) console.error(`${command} could not be run: ${error.message}`);
  return status ?? 1;
}

/** Runs a script of an installed package with this Node. */
export const runPackage = (script, args, options) =>
  run(process.execPath, [at('node_modules', ...script.split('/')), ...args], options);

// True when what npm says it installed is what the lock file asks for; packages for other machines may be missing.
function installedAsLocked() {
  const installed = read(at('node_modules', '.package-lock.json'));
  if (installed === '') return false;
  const has = JSON.parse(installed).packages;
  return Object.entries(JSON.parse(read(at('package-lock.json'))).packages).every(
    ([path, wanted]) =>
      path === '' ||
      (has[path] === undefined ? wanted.optional === true : has[path].version === wanted.version),
  );
}

/** Installs the locked packages unless they are there already. Native ones also depend on Node's own version. */
export function ensureInstalled() {
  const stampFile = at('node_modules', '.wefthouse-stamp');
  const node = process.versions.modules;
  const stamp = `${node} ${sha256(read(at('package.json')), read(at('package-lock.json')))}`;
  const old = read(stampFile);
  if (old === stamp) return;
  const forAnotherNode = old !== '' && old.split(' ')[0] !== node;
  if (forAnotherNode || !installedAsLocked()) {
    console.error('Installing the packages (once) …');
    const windows = process.platform === 'win32';
    const code = run('npm', ['ci', '--include=dev'], { stdio: ['inherit', 2, 2], shell: windows });
    if (code !== 0) {
      console.error(
        'The packages could not be installed. better-sqlite3 is fetched ready-made or compiled: compiling ' +
          'needs a C++ compiler, make and python3 (Debian: apt-get install g++ make python3).',
      );
      process.exit(code);
    }
  }
  writeFileSync(stampFile, stamp);
}

function* filesUnder(path) {
  if (!existsSync(path)) return;
  if (!statSync(path).isDirectory()) {
    if (!/\.test\.tsx?$/.test(path)) yield path;
    return;
  }
  for (const name of readdirSync(path).sort()) yield* filesUnder(join(path, name));
}

const bundles = {
  server: {
    config: 'vite.server.config.ts',
    words: 'the server',
    sources: ['src', 'data', 'vite.server.config.ts', 'package-lock.json'],
    without: 'src/ui/',
  },
  ui: {
    config: 'vite.config.ts',
    words: 'the screens',
    sources: ['src', 'data', 'public', 'index.html', 'vite.config.ts', 'package-lock.json'],
    without: 'src/adapters/',
  },
};

function hashOf({ sources, without }) {
  const hash = createHash('sha256');
  for (const file of sources.flatMap((source) => [...filesUnder(at(source))])) {
    const name = relative(root, file).replaceAll('\\', '/');
    if (!name.startsWith(without)) hash.update(name).update('\0').update(readFileSync(file));
  }
  return hash.digest('hex');
}

/** Builds a bundle when its sources are not those it was built from. A build in progress never disturbs one in use. */
export function ensureBuilt(name) {
  const bundle = bundles[name];
  const out = at('dist', name);
  const stampFile = at('dist', `${name}.stamp`);
  const stamp = hashOf(bundle);
  if (existsSync(out) && read(stampFile) === stamp) return;
  console.error(`Building ${bundle.words} …`);
  mkdirSync(at('dist'), { recursive: true });
  const fresh = at('dist', `${name}.${process.pid}`);
  const code = runPackage(
    'vite/bin/vite.js',
    ['build', '--config', bundle.config, '--outDir', fresh, '--emptyOutDir', '--logLevel', 'warn'],
    { stdio: ['inherit', 2, 2] },
  );
  if (code !== 0) {
    rmSync(fresh, { recursive: true, force: true });
    process.exit(code);
  }
  rmSync(out, { recursive: true, force: true });
  try {
    renameSync(fresh, out);
  } catch {
    // Another command of this checkout put the same build there first.
    rmSync(fresh, { recursive: true, force: true });
  }
  writeFileSync(stampFile, stamp);
}

/** The command line of the fresh bundle, in this process. */
export async function runBundled(args) {
  process.argv = [process.execPath, at('dist', 'server', 'main.js'), ...args];
  await import(new URL('../dist/server/main.js', import.meta.url).href);
}
