import type { Context, MiddlewareHandler } from 'hono';
import { getCookie, setCookie } from 'hono/cookie';
import type { Actor, House } from '../app/house.ts';
import { whoIs } from '../app/session.ts';
import type { Role } from '../dossier/workshopFacts.ts';
import type { Session } from '../ports/accounts.ts';
import type { Problem } from '../units/index.ts';
import { problemAnswer } from './answers.ts';

/** What the guard leaves for the routes behind it. */
export interface Guarded {
  Variables: { actor: Actor; session: Session; nonce: string };
}
export type Route = Context<Guarded>;

const weekSeconds = 7 * 24 * 3600;

/** The session's cookie: for this server alone, never for scripts, never from another site. */
export function sessionCookie(secure: boolean) {
  const name = secure ? '__Host-wefthouse' : 'wefthouse';
  const options = { path: '/', httpOnly: true, sameSite: 'Strict', secure } as const;
  return {
    read: (route: Context): string | undefined => getCookie(route, name),
    give: (route: Context, token: string): void =>
      setCookie(route, name, token, { ...options, maxAge: weekSeconds }),
    take: (route: Context): void => setCookie(route, name, '', { ...options, maxAge: 0 }),
  };
}

export type SessionCookie = ReturnType<typeof sessionCookie>;

const reads = ['GET', 'HEAD', 'OPTIONS'];

/**
 * Refuses writes that do not come from this server's own pages. `Origin` is sent with every write by every
 * browser of the last years, on plain http too; `Sec-Fetch-Site` only where the connection is trusted.
 */
export const ownPagesOnly: MiddlewareHandler = async (route, next) => {
  const { headers } = route.req.raw;
  if (reads.includes(route.req.method)) return next();
  const origin = headers.get('origin') ?? '';
  const site = headers.get('sec-fetch-site');
  const host = headers.get('host') ?? new URL(route.req.url).host;
  const isOwn = URL.canParse(origin)
    ? new URL(origin).host === host
    : origin === '' && site === 'same-origin';
  return isOwn && (site === null || site === 'same-origin')
    ? next()
    : problemAnswer({ code: 'foreign-origin', facts: { origin: origin || (site ?? '') } });
};

/** Lets only those through who are signed in, and notes who it is. */
export const signedInOnly =
  (house: House, cookie: SessionCookie): MiddlewareHandler<Guarded> =>
  async (route, next) => {
    const token = cookie.read(route);
    const known = token === undefined ? null : await whoIs(house, token);
    if (known === null) return problemAnswer({ code: 'signed-out', facts: {} });
    route.set('actor', known.actor);
    route.set('session', known.session);
    return next();
  };

/** Why somebody may not do what only these roles may, with a passphrase behind them; null when they may. */
export function roleProblem({ roles, proof }: Actor, ...needed: readonly Role[]): Problem | null {
  if (!needed.some((role) => roles.includes(role))) return { code: 'role-needed', facts: { roles: needed } };
  return proof === 'passphrase' ? null : { code: 'passphrase-needed', facts: {} };
}

/** Lets only an owner through who signed in with a passphrase. */
export const ownersOnly: MiddlewareHandler<Guarded> = async (route, next) => {
  const problem = roleProblem(route.get('actor'), 'owner');
  return problem === null ? next() : problemAnswer(problem);
};
