import { Hono } from 'hono';
import type { House } from '../app/house.ts';
import { answerOf, problemAnswer } from './answers.ts';
import type { Guarded } from './guard.ts';
import { readBytes } from './readBody.ts';

/** The store says more precisely what is too large; this only keeps the memory from filling before it can. */
const mostMb = 45;
const forms = ['original', 'shown', 'thumbnail'] as const;
const aYear = 'private, max-age=31536000, immutable';

/** Photographs by the hash of their bytes, which never change: a browser asks for each once. */
export function photographRoutes({ photos }: House) {
  const routes = new Hono<Guarded>();

  routes.post('/photographs', async (route) => {
    const bytes = await readBytes(route.req.raw, mostMb);
    if (!bytes.ok) return problemAnswer(bytes.problem);
    return answerOf(await photos.keep(bytes.value, route.req.header('content-type') ?? ''));
  });

  routes.get('/photographs/:photo/:form', async (route) => {
    const { photo, form: wanted } = route.req.param();
    const form = forms.find((known) => known === wanted);
    const found = form === undefined || !/^[0-9a-f]{64}$/.test(photo) ? null : await photos.read(photo, form);
    if (found === null) return problemAnswer({ code: 'nothing-here', facts: { path: route.req.path } });
    return new Response(new Uint8Array(found.bytes), {
      headers: {
        'content-type': found.mediaType,
        'cache-control': aYear,
        'content-security-policy': "default-src 'none'; sandbox",
        ...(form === 'original'
          ? { 'content-disposition': `attachment; filename="${photo.slice(0, 12)}"` }
          : {}),
      },
    });
  });
  return routes;
}
