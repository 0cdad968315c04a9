import { readdir, readFile } from 'node:fs/promises';
import { extname, join } from 'node:path';
import { promisify } from 'node:util';
import { gzip } from 'node:zlib';

const mediaTypes: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.ttf': 'font/ttf',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json',
  '.woff2': 'font/woff2',
};
const pressed = promisify(gzip);
/** Fonts and pictures are compressed already. */
const worthPressing = ['.css', '.html', '.js', '.json', '.svg', '.ttf', '.wasm', '.webmanifest'];

interface Screen {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly gzipped: Promise<Uint8Array<ArrayBuffer>> | null;
  readonly mediaType: string;
  readonly lasting: boolean;
}

/** The built screens, held in memory: what is not among them cannot be asked for. */
export type Screens = ReadonlyMap<string, Screen>;

/** Reads the built screens; null when they are not there. */
export async function readScreens(folder: string): Promise<Screens | null> {
  const screens = new Map<string, Screen>();
  try {
    for (const found of await readdir(folder, { recursive: true, withFileTypes: true })) {
      if (!found.isFile()) continue;
      const path = join(found.parentPath, found.name);
      const ending = extname(found.name);
      const name = path.slice(folder.length).replaceAll('\\', '/').replace(/^\/*/, '/');
      const bytes = new Uint8Array(await readFile(path));
      screens.set(name, {
        bytes,
        gzipped:
          worthPressing.includes(ending) && name !== '/index.html'
            ? pressed(bytes, { level: 9 }).then((out) => new Uint8Array(out))
            : null,
        mediaType: mediaTypes[ending] ?? 'application/octet-stream',
        // The build puts a hash of the contents into the names of everything under assets.
        lasting: name.startsWith('/assets/'),
      });
    }
  } catch {
    return null;
  }
  return screens.has('/index.html') ? screens : null;
}

/** The first page, with the nonce by which its own code may add styles. */
function firstPage(screens: Screens, nonce: string): Response {
  const page = new TextDecoder().decode(screens.get('/index.html')?.bytes);
  const marked = page.replace('</head>', `<meta property="csp-nonce" nonce="${nonce}">\n</head>`);
  return new Response(marked, {
    headers: { 'content-type': 'text/html; charset=utf-8', 'cache-control': 'no-store' },
  });
}

/**
 * A file of the screens; for an address of a page, the first page, whose own routes do the rest. Null for
 * what only a file could answer.
 */
export async function screenAnswer(
  screens: Screens,
  path: string,
  nonce: string,
  accepts: { readonly html: boolean; readonly gzip: boolean },
): Promise<Response | null> {
  const screen = path === '/' || path === '/index.html' ? undefined : screens.get(path);
  if (screen === undefined) {
    const isPage = path === '/' || path === '/index.html' || (accepts.html && extname(path) === '');
    return isPage ? firstPage(screens, nonce) : null;
  }
  const gzipped = accepts.gzip ? await screen.gzipped : null;
  return new Response(gzipped ?? screen.bytes, {
    headers: {
      'content-type': screen.mediaType,
      'cache-control': screen.lasting ? 'public, max-age=31536000, immutable' : 'no-cache',
      ...(screen.gzipped === null ? {} : { vary: 'accept-encoding' }),
      ...(gzipped === null ? {} : { 'content-encoding': 'gzip' }),
    },
  });
}
