import { Hono } from 'hono';
import type { House } from '../app/house.ts';
import type { Backup } from '../ports/backup.ts';
import { openRoutes, peopleRoutes } from './accessRoutes.ts';
import { problemAnswer } from './answers.ts';
import { cardRoutes } from './cardRoutes.ts';
import { changesRoute } from './changesRoute.ts';
import { type Guarded, ownPagesOnly, sessionCookie, signedInOnly } from './guard.ts';
import { paperRoutes } from './paperRoutes.ts';
import { photographRoutes } from './photographRoutes.ts';
import { problemList, problemPage } from './problemPage.ts';
import { recordRoutes } from './recordRoutes.ts';
import { roomRoutes, sensorRoutes } from './roomRoutes.ts';
import { rulebookRoutes } from './rulebookRoutes.ts';
import { safeHeaders } from './safeHeaders.ts';
import { safekeepingRoutes } from './safekeepingRoutes.ts';
import { type Screens, screenAnswer } from './screens.ts';
import { shelfRoutes } from './shelfRoutes.ts';
import { type Authority, trustRoutes } from './trustRoutes.ts';

export interface AppSettings {
  /** The code that makes the first owner; null once there is one. */
  readonly setUpCode: string | null;
  readonly screens: Screens | null;
  /** True behind TLS: cookies then never travel without it. */
  readonly secure: boolean;
  /** The workshop's own authority, where it made the certificate. */
  readonly authority: Authority | null;
  readonly backup: Backup | null;
  /** Told of what nobody expected. */
  readonly complain: (error: unknown) => void;
}

/** The whole server, as a function from request to answer. */
export function makeApp(house: House, settings: AppSettings) {
  const { screens, secure, setUpCode, authority, backup, complain } = settings;
  const cookie = sessionCookie(secure);
  const app = new Hono<Guarded>();
  app.onError((error) => {
    complain(error);
    return problemAnswer({ code: 'unexpected', facts: {} });
  });
  app.use(safeHeaders);
  app.route('/api', sensorRoutes(house));
  app.use(ownPagesOnly);
  app.route('/trust', trustRoutes(authority));
  app.route('/api', openRoutes(house, cookie, setUpCode));
  app.use('/api/*', signedInOnly(house, cookie));
  for (const routes of [
    changesRoute(house, cookie),
    peopleRoutes(house),
    recordRoutes(house),
    roomRoutes(house),
    rulebookRoutes(house),
    shelfRoutes(house),
    photographRoutes(house),
    paperRoutes(house),
    cardRoutes(house),
    safekeepingRoutes(house, backup),
  ]) {
    app.route('/api', routes);
  }
  app.get('/problems', (route) => route.html(problemList(route.get('nonce'))));
  app.get('/problems/:code', async (route, next) => {
    const page = problemPage(route.req.param('code'), route.get('nonce'));
    return page === null ? next() : route.html(page);
  });
  app.notFound(async (route) => {
    const { path, method } = route.req;
    const isPage = (method === 'GET' || method === 'HEAD') && !/^\/(api|problems|trust)(\/|$)/.test(path);
    const accepts = {
      html: /text\/html|\*\/\*/.test(route.req.header('accept') ?? ''),
      gzip: /\bgzip\b/.test(route.req.header('accept-encoding') ?? ''),
    };
    const screen =
      isPage && screens !== null ? await screenAnswer(screens, path, route.get('nonce'), accepts) : null;
    return screen ?? problemAnswer({ code: 'nothing-here', facts: { path } });
  });
  return app;
}
