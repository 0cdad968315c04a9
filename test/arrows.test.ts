import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '..');
const source = join(root, 'src');

const pure = ['units', 'core', 'dossier', 'papers', 'text', 'contract', 'ports'];
const beneathApp = pure;

/** Folders each folder may look at, besides itself. */
const arrows: Readonly<Record<string, readonly string[]>> = {
  units: [],
  core: ['units'],
  dossier: ['units', 'core'],
  papers: ['units', 'core', 'dossier'],
  text: ['units', 'core', 'dossier', 'papers'],
  contract: ['units', 'core', 'dossier', 'papers', 'text'],
  ports: ['units', 'core', 'dossier', 'papers', 'text', 'contract'],
  app: beneathApp,
  adapters: beneathApp,
  http: [...beneathApp, 'app'],
  cli: [...beneathApp, 'app', 'demo'],
  demo: [...beneathApp, 'app'],
  ui: ['units', 'core', 'dossier', 'text', 'contract'],
};

/** Packages each folder may import; `node:` stands for Node's own modules. */
const packages: Readonly<Record<string, readonly string[]>> = {
  units: [],
  core: ['fft.js', 'ml-matrix', 'd3-array'],
  dossier: ['zod', '@noble/hashes'],
  papers: ['d3-scale', 'd3-shape'],
  text: [],
  contract: ['zod'],
  ports: [],
  app: ['node:'],
  http: ['node:', 'hono', '@hono/node-server', 'zod'],
  cli: ['node:', 'zod'],
  demo: [],
  ui: [
    ...['react', 'react-dom', 'react-aria-components', '@tanstack/react-query', 'wouter', 'idb', 'zod'],
    ...['d3-scale', 'd3-shape', 'vazirmatn', '@fontsource-variable/source-serif-4', 'zxing-wasm'],
  ],
};

/** Each adapter is one door to the outside, with the packages of that door. */
const adapterPackages: Readonly<Record<string, readonly string[]>> = {
  backup: ['node:', 'better-sqlite3'],
  clock: ['node:'],
  codes: ['node:', 'qrcode', 'zxing-wasm', 'sharp'],
  disk: ['node:'],
  forecast: ['node:'],
  images: ['node:', 'sharp', 'exifr', 'heic-decode'],
  memory: ['node:'],
  pdf: ['node:', 'sharp'],
  record: ['node:'],
  secrets: ['node:', '@node-rs/argon2'],
  sqlite: ['node:', 'better-sqlite3'],
  tls: ['node:'],
  zip: ['node:', 'yazl'],
};

interface SourceFile {
  readonly path: string;
  /** Folder under src; `main.ts` has none. */
  readonly folder: string;
  readonly code: string;
  readonly imports: readonly string[];
}

const withoutComments = (code: string): string =>
  code.replace(/\/\*[\s\S]*?\*\//g, '').replace(/(^|[^:'"`])\/\/.*$/gm, '$1');

/** `import … from`, `export … from`, bare imports, and imports asked for while running. */
const importForms = [
  /^(?:import|export)\b[^'"`;]*?\bfrom\s*['"]([^'"]+)['"]/gm,
  /^import\s*['"]([^'"]+)['"]/gm,
  /\bimport\(\s*['"]([^'"]+)['"]/g,
];

const files: readonly SourceFile[] = readdirSync(source, { recursive: true, encoding: 'utf8' })
  .filter((name) => /\.tsx?$/.test(name) && !/\.(test|d)\.tsx?$/.test(name))
  .map((name) => {
    const code = withoutComments(readFileSync(join(source, name), 'utf8'));
    const imports = importForms.flatMap((form) =>
      Array.from(code.matchAll(form), ([, target = '']) => target),
    );
    return { path: name, folder: name.includes('/') ? (name.split('/')[0] ?? '') : '', code, imports };
  });

const packageOf = (target: string): string =>
  target.startsWith('node:')
    ? 'node:'
    : target
        .split('/')
        .slice(0, target.startsWith('@') ? 2 : 1)
        .join('/');

const allowedPackages = ({ path, folder }: SourceFile): readonly string[] =>
  (folder === 'adapters' ? adapterPackages[path.split('/')[1] ?? ''] : packages[folder]) ?? [];

describe('dependencies point inwards', () => {
  test('every folder of the sources has its arrows, and none is forgotten', () => {
    const folders = new Set(files.map(({ folder }) => folder).filter((folder) => folder !== ''));
    expect([...folders].sort()).toEqual(Object.keys(arrows).sort());
    expect(files.filter(({ folder }) => folder === '').map(({ path }) => path)).toEqual(['main.ts']);
    // The test is worth nothing if it reads no imports.
    expect(files.flatMap(({ imports }) => imports).length).toBeGreaterThan(500);
  });

  test('a folder looks only at those beneath it', () => {
    const wrong = files
      .filter(({ folder }) => folder !== '')
      .flatMap(({ path, folder, imports }) =>
        imports
          .filter((target) => target.startsWith('.'))
          .map((target) => relative(source, resolve(source, dirname(path), target)))
          .filter((target) => !target.startsWith('../data/'))
          .filter((target) => {
            const into = target.split('/')[0] ?? '';
            return into !== folder && !(arrows[folder] ?? []).includes(into);
          })
          .map((target) => `${path} → ${target}`),
      );
    expect(wrong).toEqual([]);
  });

  test('a folder imports only its own packages', () => {
    const wrong = files
      .filter(({ folder }) => folder !== '')
      .flatMap((file) =>
        file.imports
          .filter((target) => !target.startsWith('.'))
          .filter((target) => !allowedPackages(file).includes(packageOf(target)))
          .map((target) => `${file.path} → ${target}`),
      );
    expect(wrong).toEqual([]);
  });

  test('the compiler holds the same arrows: references of each folder’s tsconfig', () => {
    for (const [folder, beneath] of Object.entries(arrows)) {
      const { references } = JSON.parse(readFileSync(join(source, folder, 'tsconfig.json'), 'utf8')) as {
        readonly references: readonly { readonly path: string }[];
      };
      const named = references.map(({ path }) => path.replace('../', ''));
      expect({ folder, beyond: named.filter((name) => !beneath.includes(name)) }).toEqual({
        folder,
        beyond: [],
      });
    }
  });
});

describe('what is pure knows no clock, no chance, no machine', () => {
  const forbidden = [
    /\bDate\.now\b/,
    /\bnew Date\(\s*\)/,
    /\bMath\.random\b/,
    /\bprocess\./,
    /\bfetch\(/,
    /\bsetTimeout\b/,
    /\bsetInterval\b/,
    /\blocalStorage\b/,
    /\bcrypto\.(getRandomValues|randomUUID)\b/,
    /\bperformance\.now\b/,
  ];

  test.each(pure)('src/%s', (folder) => {
    const wrong = files
      .filter((file) => file.folder === folder)
      .flatMap(({ path, code }) =>
        forbidden.filter((pattern) => pattern.test(code)).map((pattern) => `${path}: ${pattern.source}`),
      );
    expect(wrong).toEqual([]);
  });

  test('and the compiler gives these folders no types of Node or of browsers', () => {
    for (const folder of pure) {
      const settings = JSON.parse(readFileSync(join(source, folder, 'tsconfig.json'), 'utf8')) as {
        readonly compilerOptions: { readonly types?: readonly string[]; readonly lib?: readonly string[] };
      };
      expect(settings.compilerOptions.types ?? []).toEqual([]);
      expect(settings.compilerOptions.lib ?? []).toEqual([]);
    }
  });
});

describe('house rules that a reader can count on', () => {
  test('every relative import names an existing file with its ending', () => {
    const wrong = files.flatMap(({ path, imports }) =>
      imports
        .filter((target) => target.startsWith('.'))
        .filter((target) => !existsSync(resolve(source, dirname(path), target.replace(/\?\w+$/, ''))))
        .map((target) => `${path} → ${target}`),
    );
    expect(wrong).toEqual([]);
  });

  test('no file is so long that a second thing must be in it; tables of words and stories may be', () => {
    const isTable = (path: string): boolean => /Words\.ts$|^demo\/story\//.test(path);
    const long = files
      .map(({ path }) => ({ path, lines: readFileSync(join(source, path), 'utf8').split('\n').length - 1 }))
      .filter(({ path, lines }) => lines > 400 && !isTable(path));
    expect(long).toEqual([]);
  });

  test('nothing is exported without a name, and no type is switched off', () => {
    const wrong = files.flatMap(({ path, code }) =>
      [/\bexport default\b/, /\bas any\b/, /:\s*any\b/, /@ts-(ignore|expect-error|nocheck)/, /biome-ignore/]
        .filter((pattern) => pattern.test(code))
        .map((pattern) => `${path}: ${pattern.source}`),
    );
    expect(wrong).toEqual([]);
  });
});
