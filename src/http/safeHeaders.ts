import { randomBytes } from 'node:crypto';
import type { MiddlewareHandler } from 'hono';
import type { Guarded } from './guard.ts';

/**
 * Headers that keep a page to itself: its own scripts and styles only, no frames around it. Styles that the
 * screens' own code puts into the page carry the answer's nonce. No Strict-Transport-Security: it would lock
 * out every device that meets the same name later on plain http.
 */
export const safeHeaders: MiddlewareHandler<Guarded> = async (route, next) => {
  const nonce = randomBytes(16).toString('base64');
  route.set('nonce', nonce);
  await next();
  const { headers } = route.res;
  const policy = [
    "default-src 'self'",
    "script-src 'self' 'wasm-unsafe-eval'",
    `style-src 'self' 'nonce-${nonce}'`,
    "img-src 'self' blob: data:",
    "worker-src 'self' blob:",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ];
  if (!headers.has('content-security-policy')) headers.set('content-security-policy', policy.join('; '));
  headers.set('x-content-type-options', 'nosniff');
  headers.set('x-frame-options', 'DENY');
  headers.set('referrer-policy', 'same-origin');
  headers.set('cross-origin-opener-policy', 'same-origin');
  headers.set('cross-origin-resource-policy', 'same-origin');
  headers.set('permissions-policy', 'camera=(self), geolocation=(), microphone=()');
};
