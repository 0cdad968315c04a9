import { Hono } from 'hono';
import type { House } from '../app/house.ts';
import {
  addFirstOwner,
  addPerson,
  changePerson,
  changeSecret,
  changeSettings,
  listPeople,
} from '../app/people.ts';
import { endSession, whoIs } from '../app/session.ts';
import { signIn, switchPerson } from '../app/signIn.ts';
import { readWorkshop } from '../app/workshop.ts';
import {
  firstOwnerRequest,
  personChange,
  personRequest,
  type StateAnswer,
  secretChange,
  settingsRequest,
  signInRequest,
  switchRequest,
} from '../contract/index.ts';
import type { Person } from '../dossier/workshopFacts.ts';
import type { Result } from '../units/index.ts';
import { answerOf, jsonAnswer, problemAnswer } from './answers.ts';
import {
  type Guarded,
  ownersOnly,
  type Route,
  roleProblem,
  type SessionCookie,
  signedInOnly,
} from './guard.ts';
import { readJsonBody } from './readBody.ts';

/** The house's state, the first owner, signing in and out: all that works without a session. */
export function openRoutes(house: House, cookie: SessionCookie, setUpCode: string | null) {
  const routes = new Hono<Guarded>();
  const opened = (route: Route, result: Result<{ readonly token: string; readonly person: Person }>) => {
    if (!result.ok) return problemAnswer(result.problem);
    cookie.give(route, result.value.token);
    const { person, name, roles } = result.value.person;
    return route.json({ signedIn: { person, name, roles } });
  };

  routes.get('/state', async (route) => {
    const { settings, people } = await readWorkshop(house);
    const token = cookie.read(route);
    const known = token === undefined ? null : await whoIs(house, token);
    const answer: StateAnswer = {
      setUp: Object.keys(people).length > 0,
      signedIn:
        known === null
          ? null
          : { person: known.actor.person, name: known.actor.name, roles: known.actor.roles },
      byPin: known?.session.proof === 'pin',
      ...(known === null ? {} : { people: await listPeople(house) }),
      settings,
    };
    return jsonAnswer(answer);
  });

  routes.post('/first-owner', async (route) => {
    const request = await readJsonBody(route.req.raw, firstOwnerRequest);
    return request.ok
      ? opened(route, await addFirstOwner(house, setUpCode, request.value))
      : problemAnswer(request.problem);
  });

  routes.post('/sign-in', async (route) => {
    const request = await readJsonBody(route.req.raw, signInRequest);
    return request.ok ? opened(route, await signIn(house, request.value)) : problemAnswer(request.problem);
  });

  routes.post('/switch', signedInOnly(house, cookie), async (route) => {
    const request = await readJsonBody(route.req.raw, switchRequest);
    return request.ok
      ? opened(route, await switchPerson(house, route.get('session'), request.value))
      : problemAnswer(request.problem);
  });

  routes.post('/sign-out', async (route) => {
    const token = cookie.read(route);
    if (token !== undefined) await endSession(house, token);
    cookie.take(route);
    return route.json({ signedIn: null });
  });
  return routes;
}

/** People, their secrets, and the workshop's settings. */
export function peopleRoutes(house: House) {
  const routes = new Hono<Guarded>();
  routes.get('/people', async () => jsonAnswer({ people: await listPeople(house) }));

  routes.post('/people', ownersOnly, async (route) => {
    const request = await readJsonBody(route.req.raw, personRequest);
    if (!request.ok) return problemAnswer(request.problem);
    const added = await addPerson(house, route.get('actor'), request.value);
    return added.ok ? jsonAnswer({ people: await listPeople(house) }) : problemAnswer(added.problem);
  });

  routes.put('/people/:person', ownersOnly, async (route) => {
    const request = await readJsonBody(route.req.raw, personChange);
    if (!request.ok) return problemAnswer(request.problem);
    const changed = await changePerson(house, route.get('actor'), route.req.param('person'), request.value);
    return changed.ok ? jsonAnswer({ people: await listPeople(house) }) : problemAnswer(changed.problem);
  });

  routes.put('/people/:person/secret', async (route) => {
    const { actor, session, person } = {
      actor: route.get('actor'),
      session: route.get('session'),
      person: route.req.param('person'),
    };
    // One's own secret needs no role, but it does need the passphrase that it replaces to have been shown.
    const problem = roleProblem(actor, ...(person === actor.person ? actor.roles : (['owner'] as const)));
    if (problem !== null) return problemAnswer(problem);
    const request = await readJsonBody(route.req.raw, secretChange);
    return request.ok
      ? answerOf(await changeSecret(house, person, session.token, request.value), () => ({}))
      : problemAnswer(request.problem);
  });

  routes.post('/settings', ownersOnly, async (route) => {
    const request = await readJsonBody(route.req.raw, settingsRequest);
    return request.ok
      ? answerOf(await changeSettings(house, route.get('actor'), request.value), ({ settings }) => ({
          settings,
        }))
      : problemAnswer(request.problem);
  });
  return routes;
}
