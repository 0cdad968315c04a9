import { createRequire } from 'node:module';
import { Worker } from 'node:worker_threads';

/** Red, green, blue and opacity of a HEIC picture, upright. */
export interface HeicPixels {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly data: Uint8Array;
}

export type HeicAnswer = HeicPixels | { readonly tooManyPixels: number } | { readonly damaged: string };

/** Decoding takes about a second and a half for a phone's picture; far beyond that it will not end. */
const patienceMs = 60_000;

/**
 * Runs in a thread of its own, since it takes long and cannot be interrupted. Given as text, so that it is the
 * same in the source tree, in tests and in the built server.
 */
const work = `
  const { parentPort, workerData } = require('node:worker_threads');
  (async () => {
    const pictures = await require(workerData.decoder).all({ buffer: workerData.bytes });
    const { width, height, decode } = pictures[0];
    if (width * height > workerData.mostPixels) return { tooManyPixels: width * height };
    const { data } = await decode();
    return { widthPx: width, heightPx: height, data: new Uint8Array(data.buffer) };
  })()
    .catch((error) => ({ damaged: String(error && error.message || error) }))
    .then((answer) => parentPort.postMessage(answer, answer.data ? [answer.data.buffer] : []));
`;

/** Decodes the first picture of a HEIC file, if it has no more pixels than allowed. */
export function decodeHeic(bytes: Uint8Array, mostPixels: number): Promise<HeicAnswer> {
  const decoder = createRequire(import.meta.url).resolve('heic-decode');
  // The decoder prints its complaints; they come back as `damaged` anyway.
  const quiet = { stdout: true, stderr: true };
  const worker = new Worker(work, { eval: true, workerData: { decoder, bytes, mostPixels }, ...quiet });
  return new Promise<HeicAnswer>((answer) => {
    const late = setTimeout(() => answer({ damaged: 'decoding it does not end' }), patienceMs);
    worker.once('message', (message: HeicAnswer) => answer(message));
    worker.once('error', (error) => answer({ damaged: error.message }));
    worker.once('exit', () => {
      clearTimeout(late);
      answer({ damaged: 'decoding it was broken off' });
    });
  }).finally(() => worker.terminate());
}
