import { closeSync, fsyncSync, mkdirSync, openSync, readdirSync, rmSync, statSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';

/** Makes a folder, readable by its owner alone, and sees to it that it is still there after a power cut. */
export function makeFolder(folder: string): void {
  const first = mkdirSync(folder, { recursive: true, mode: 0o700 });
  if (first === undefined) return;
  for (let made = resolve(folder); ; made = dirname(made)) {
    syncFolder(dirname(made));
    if (made === resolve(first)) return;
  }
}

/** Makes the names in a folder durable. */
export function syncFolder(folder: string): void {
  const open = openSync(folder, 'r');
  try {
    fsyncSync(open);
  } finally {
    closeSync(open);
  }
}

/** Removes the files of a folder that were last written before an instant. */
export function removeOlder(folder: string, thanMs: number): void {
  for (const path of readdirSync(folder).map((name) => join(folder, name))) {
    const written = statSync(path, { throwIfNoEntry: false })?.mtimeMs;
    if (written !== undefined && written < thanMs) rmSync(path, { force: true });
  }
}
