import type * as z from 'zod/mini';
import { readShape } from '../contract/index.ts';
import type { RequestProblem } from '../text/httpWords.ts';
import { done, type Result, refused } from '../units/index.ts';

const mega = 1_000_000;
/** A consignment of many rugs with drawn marks and a signature stays far below; a long note is named by its shape. */
const mostJsonMb = 4;

/** All bytes of a body, or the refusal as soon as there are too many. */
export async function readBytes(
  request: Request,
  mostMb: number,
): Promise<Result<Uint8Array<ArrayBuffer>, RequestProblem>> {
  const tooLarge = refused('body-too-large', { most: mostMb });
  if (Number(request.headers.get('content-length') ?? 0) > mostMb * mega) return tooLarge;
  const parts: Uint8Array[] = [];
  let length = 0;
  const reader = request.body?.getReader();
  for (;;) {
    const part = await reader?.read();
    if (part === undefined || part.done) break;
    length += part.value.byteLength;
    if (length > mostMb * mega) {
      await reader?.cancel();
      return tooLarge;
    }
    parts.push(part.value);
  }
  const bytes = new Uint8Array(length);
  let at = 0;
  for (const part of parts) {
    bytes.set(part, at);
    at += part.byteLength;
  }
  return done(bytes);
}

/** A JSON body of the shape asked for, or the first thing that is wrong with it. */
export async function readJsonBody<Shape extends z.ZodMiniType>(
  request: Request,
  shape: Shape,
): Promise<Result<z.infer<Shape>, RequestProblem>> {
  const given = request.headers.get('content-type') ?? '';
  if (!/^application\/json\s*(;|$)/i.test(given)) {
    return refused('body-wrong-type', { given, wanted: 'application/json' });
  }
  const bytes = await readBytes(request, mostJsonMb);
  if (!bytes.ok) return bytes;
  let body: unknown;
  try {
    body = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes.value));
  } catch (error) {
    return refused('body-not-json', { reason: error instanceof Error ? error.message : String(error) });
  }
  return readShape(shape, body);
}
