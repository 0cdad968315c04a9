import { spawn } from 'node:child_process';
import { createRequire } from 'node:module';
import { dirname } from 'node:path';
import { pathToFileURL } from 'node:url';
import child from './typesetterChild.js?raw';

export interface TypesettingJob {
  readonly template: string;
  readonly data: string;
  readonly photos: readonly { readonly path: string; readonly bytes: Uint8Array }[];
  readonly createdAtSeconds: number;
  readonly patienceMs: number;
}

export type TypesettingOutcome =
  | { readonly ok: true; readonly bytes: Uint8Array; readonly peakKiB: number }
  | { readonly ok: false; readonly cause: 'too-long' | 'failed'; readonly reason: string };

const require = createRequire(import.meta.url);
const folderOf = (file: string): string => dirname(require.resolve(file));

/** The product's own faces; the compiler turns to the machine's for scripts they lack. */
const fontPaths = (): readonly string[] => [
  folderOf('vazirmatn/fonts/ttf/Vazirmatn-Regular.ttf'),
  folderOf('@expo-google-fonts/source-serif-4/400Regular/SourceSerif4_400Regular.ttf'),
  folderOf('@expo-google-fonts/source-serif-4/400Regular_Italic/SourceSerif4_400Regular_Italic.ttf'),
  folderOf('@expo-google-fonts/source-serif-4/600SemiBold/SourceSerif4_600SemiBold.ttf'),
];

const isAnswer = (message: unknown): message is { bytes: Uint8Array; peakKiB: number } =>
  typeof message === 'object' &&
  message !== null &&
  'bytes' in message &&
  message.bytes instanceof Uint8Array;

/**
 * Has one paper typeset by a fresh process and stops that process when it takes too long.
 * The process gets its programme as text and the compiler's address, so it runs alike from the source tree
 * and from a bundle; it inherits nothing of the server's surroundings.
 */
export function typeset(job: TypesettingJob): Promise<TypesettingOutcome> {
  const { patienceMs, ...work } = job;
  return new Promise((answer) => {
    const helper = spawn(process.execPath, ['--input-type=module', '--eval', child], {
      stdio: ['ignore', 'ignore', 'pipe', 'ipc'],
      serialization: 'advanced',
      // Windows cannot start a process without this one; the rest of the server's surroundings stay out.
      env: { SystemRoot: process.env['SystemRoot'] },
    });
    let complaint = '';
    let outcome: TypesettingOutcome | undefined;
    const alarm = setTimeout(() => {
      outcome ??= { ok: false, cause: 'too-long', reason: `not done after ${patienceMs} ms` };
      helper.kill('SIGKILL');
    }, patienceMs);
    helper.stderr?.setEncoding('utf8').on('data', (text: string) => {
      complaint = (complaint + text).slice(-4000);
    });
    helper.on('message', (message) => {
      if (isAnswer(message)) outcome = { ok: true, bytes: message.bytes, peakKiB: message.peakKiB };
    });
    helper.on('error', (error) => {
      outcome ??= { ok: false, cause: 'failed', reason: error.message };
    });
    helper.on('close', (code, signal) => {
      clearTimeout(alarm);
      answer(
        outcome ?? { ok: false, cause: 'failed', reason: complaint.trim() || `ended with ${signal ?? code}` },
      );
    });
    helper.send(
      {
        ...work,
        compilerUrl: pathToFileURL(require.resolve('@myriaddreamin/typst-ts-node-compiler')).href,
        fontPaths: fontPaths(),
      },
      () => {},
    );
  });
}
