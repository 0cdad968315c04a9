import { Hono } from 'hono';
import { problemAnswer } from './answers.ts';
import type { Guarded } from './guard.ts';
import { trustPage } from './trustPage.ts';

/** What a tablet needs to trust a certificate that the workshop made itself. */
export interface Authority {
  /** The authority's certificate, PEM. */
  readonly certificate: string;
  /** SHA-256 of the certificate, to be compared by eye with what the terminal prints. */
  readonly fingerprint: string;
}

/** The authority's certificate, for whoever wants to trust it; it holds no secret. */
export function trustRoutes(authority: Authority | null) {
  const routes = new Hono<Guarded>();
  routes.get('/', (route) =>
    authority === null
      ? problemAnswer({ code: 'nothing-here', facts: { path: '/trust' } })
      : route.html(trustPage(authority.fingerprint, route.get('nonce'))),
  );
  routes.get('/authority.crt', (route) =>
    authority === null
      ? problemAnswer({ code: 'nothing-here', facts: { path: route.req.path } })
      : new Response(authority.certificate, {
          headers: {
            'content-type': 'application/x-x509-ca-cert',
            'content-disposition': 'attachment; filename="wefthouse-authority.crt"',
          },
        }),
  );
  return routes;
}
