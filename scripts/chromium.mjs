// Finds a Chromium for the browser journeys, or installs Debian's where that is allowed.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { run } from './ground.mjs';

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

/** Path of a Chromium on this machine, or undefined. `WEFTHOUSE_CHROMIUM` says where an unusual one is. */
export function findChromium() {
  const given = process.env.WEFTHOUSE_CHROMIUM;
  if (given !== undefined) return given;
  const folders = (process.env.PATH ?? '').split(delimiter);
  return folders
    .flatMap((folder) => names.map((name) => join(folder, name)))
    .find((path) => existsSync(path));
}

const succeeds = (command, args) => spawnSync(command, args, { stdio: 'ignore' }).status === 0;

/** A Chromium, installed by Debian's package if need be; undefined after saying what a person must do. */
export function ensureChromium() {
  const found = findChromium();
  if (found !== undefined) return found;
  const sudo = process.getuid?.() === 0 ? [] : succeeds('sudo', ['-n', 'true']) ? ['sudo', '-n'] : undefined;
  if (sudo !== undefined && succeeds('apt-get', ['--version'])) {
    console.log('Installing Chromium for the browser journeys (once) …');
    const apt = (...args) =>
      run('env', [...sudo, 'env', 'DEBIAN_FRONTEND=noninteractive', 'apt-get', '-qq', ...args]);
    apt('update');
    apt('install', '--yes', '--no-install-recommends', 'chromium');
  }
  const installed = findChromium();
  if (installed === undefined) {
    console.error(
      'The browser journeys need Chromium, and it is neither here nor may this account install it.\n' +
        'On Debian or Ubuntu run:  sudo apt-get install --no-install-recommends chromium\n' +
        'Elsewhere install Chromium or Chrome and set WEFTHOUSE_CHROMIUM to its path. Then run npm test again.',
    );
  }
  return installed;
}
