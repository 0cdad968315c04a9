import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { readScreens, type Screens } from '../../src/http/screens.ts';
import { memoryHouse } from '../support/memoryHouse.ts';
import { throwAwayFolder } from '../support/openInFolder.ts';
import { appOf } from '../support/tablet.ts';

const code = `console.log('woven');\n`.repeat(40);
let remove: () => void;
let screens: Screens;

beforeEach(async () => {
  const made = throwAwayFolder();
  remove = made.remove;
  const { folder } = made;
  mkdirSync(join(folder, 'assets'));
  writeFileSync(join(folder, 'index.html'), '<html><head><title>W</title></head><body></body></html>');
  writeFileSync(join(folder, 'assets', 'index-abc.js'), code);
  writeFileSync(join(folder, 'mark.svg'), '<svg xmlns="http://www.w3.org/2000/svg"/>');
  const read = await readScreens(folder);
  if (read === null) throw new Error('no screens');
  screens = read;
});
afterEach(() => remove());

const ask = (path: string, headers: Record<string, string> = { accept: 'text/html' }) =>
  appOf(memoryHouse(), { screens }).request(`http://localhost:8470${path}`, { headers });

test('every address of a page gets the first page, fresh, with a nonce that is used once', async () => {
  const nonces = new Set<string>();
  for (const path of ['/', '/rugs', '/rugs/0198b1f2-7c1e', '/bench/convert']) {
    const answer = await ask(path);
    expect(answer.status).toBe(200);
    expect(answer.headers.get('cache-control')).toBe('no-store');
    const nonce = /property="csp-nonce" nonce="([^"]+)"/.exec(await answer.text())?.[1] ?? '';
    expect(answer.headers.get('content-security-policy')).toContain(`'nonce-${nonce}'`);
    nonces.add(nonce);
  }
  expect(nonces.size).toBe(4);
});

test('what carries its hash in its name is kept for a year, anything else is asked for anew', async () => {
  expect((await ask('/assets/index-abc.js')).headers.get('cache-control')).toMatch(/immutable/);
  expect((await ask('/mark.svg')).headers.get('cache-control')).toBe('no-cache');
});

test('code is sent compressed to whoever can take it, and plain to others', async () => {
  const pressed = await ask('/assets/index-abc.js', { 'accept-encoding': 'br, gzip' });
  expect(pressed.headers.get('content-encoding')).toBe('gzip');
  expect(gunzipSync(new Uint8Array(await pressed.arrayBuffer())).toString()).toBe(code);
  const plain = await ask('/assets/index-abc.js', {});
  expect(plain.headers.get('content-encoding')).toBeNull();
  expect(await plain.text()).toBe(code);
  expect(plain.headers.get('content-type')).toBe('text/javascript; charset=utf-8');
});

test('a file that is not there, an unknown part of the API and a way out of the folder are answered 404', async () => {
  for (const path of [
    '/assets/index-old.js',
    '/favicon.ico',
    '/api',
    '/problems/none',
    '/trust',
    '/..%2f..%2fpackage.json',
    '/%2e%2e/package.json',
  ]) {
    const { status } = await ask(path);
    expect({ path, status }).toEqual({ path, status: path === '/api' ? 401 : 404 });
  }
});

test('without built screens the API still answers', async () => {
  const answer = await appOf(memoryHouse()).request('http://localhost:8470/', {
    headers: { accept: 'text/html' },
  });
  expect(answer.status).toBe(404);
  expect(await readScreens('/nowhere')).toBeNull();
});
