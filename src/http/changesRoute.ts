import { Hono } from 'hono';
import type { House } from '../app/house.ts';
import { whoIs } from '../app/session.ts';
import type { Guarded, SessionCookie } from './guard.ts';

const heartbeatMs = 20_000;

/** Tells open screens which streams moved, as server-sent events, for as long as their session lasts. */
export function changesRoute(house: House, cookie: SessionCookie) {
  const routes = new Hono<Guarded>();
  routes.get('/changes', (route) => {
    const token = cookie.read(route) ?? '';
    const encoder = new TextEncoder();
    let stop = (): void => {};
    const body = new ReadableStream<Uint8Array>({
      start(controller) {
        const send = (text: string): void => controller.enqueue(encoder.encode(text));
        const deaf = house.ledger.onAppend((streams) =>
          send(`event: moved\ndata: ${JSON.stringify({ streams })}\n\n`),
        );
        const heartbeat = setInterval(async () => {
          if ((await whoIs(house, token)) !== null) return send(': still here\n\n');
          stop();
          controller.close();
        }, heartbeatMs);
        heartbeat.unref();
        stop = () => {
          clearInterval(heartbeat);
          deaf();
        };
        send('retry: 2000\n\n');
      },
      cancel: () => stop(),
    });
    return new Response(body, {
      headers: {
        'content-type': 'text/event-stream; charset=utf-8',
        'cache-control': 'no-store',
        'x-accel-buffering': 'no',
      },
    });
  });
  return routes;
}
