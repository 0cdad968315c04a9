import { describe, expect, test } from 'vitest';
import { memoryHouse } from '../support/memoryHouse.ts';
import { appOf, openedHouse, ownersPassphrase, setUpCode, Tablet } from '../support/tablet.ts';

const start = '2026-03-02T08:00:00.000Z';
const hoursOn = (hours: number): string => new Date(Date.parse(start) + hours * 3_600_000).toISOString();
const tobin = {
  person: 'tobin',
  name: 'Tobin',
  roles: ['washer'],
  passphrase: 'warp and weft and warp',
  pin: '2846',
};

describe('the first start', () => {
  test('the code from the terminal makes the owner, once', async () => {
    const house = memoryHouse();
    const tablet = new Tablet(appOf(house));
    expect((await tablet.get('/api/state')).body).toMatchObject({ setUp: false, signedIn: null });
    const request = {
      code: 'k7qm 2x9t',
      name: 'Mirela',
      passphrase: ownersPassphrase,
      workshopName: 'Fern Lane',
    };
    expect((await tablet.post('/api/first-owner', request)).status).toBe(200);
    const { body } = await tablet.get('/api/state');
    expect(body).toMatchObject({
      setUp: true,
      signedIn: { name: 'Mirela', roles: ['owner'] },
      settings: { name: 'Fern Lane' },
    });
    const again = await new Tablet(appOf(house)).post('/api/first-owner', request);
    expect(again).toMatchObject({ status: 409, body: { code: 'set-up-done' } });
  });

  test('a wrong code makes nobody, and guessing is closed after five tries', async () => {
    const house = memoryHouse();
    const tablet = new Tablet(appOf(house));
    const request = {
      code: 'AAAA-AAAA',
      name: 'Mirela',
      passphrase: ownersPassphrase,
      workshopName: 'Fern Lane',
    };
    for (let tries = 0; tries < 5; tries += 1) {
      expect((await tablet.post('/api/first-owner', request)).body['code']).toBe('set-up-code-wrong');
    }
    const right = await tablet.post('/api/first-owner', { ...request, code: setUpCode });
    expect(right).toMatchObject({ status: 429, body: { code: 'sign-in-locked' } });
    expect((await tablet.get('/api/state')).body).toMatchObject({ setUp: false });
  });

  test('a short passphrase is refused with its length', async () => {
    const tablet = new Tablet(appOf(memoryHouse()));
    const request = { code: setUpCode, name: 'Mirela', passphrase: 'wool', workshopName: 'Fern Lane' };
    const { status, body } = await tablet.post('/api/first-owner', request);
    expect(status).toBe(422);
    expect(body).toMatchObject({ code: 'passphrase-too-short', facts: { length: 4, least: 10 } });
  });
});

describe('signing in', () => {
  test('a name is known whatever its capitals; a wrong passphrase and an unknown name are answered alike', async () => {
    const { app } = await openedHouse(memoryHouse());
    const right = await new Tablet(app).post('/api/sign-in', {
      name: ' mIRELA ',
      passphrase: ownersPassphrase,
    });
    expect(right).toMatchObject({ status: 200, body: { signedIn: { name: 'Mirela' } } });
    const wrong = await new Tablet(app).post('/api/sign-in', {
      name: 'Mirela',
      passphrase: 'something else',
    });
    const unknown = await new Tablet(app).post('/api/sign-in', {
      name: 'Nobody',
      passphrase: 'something else',
    });
    expect(wrong.status).toBe(401);
    expect(unknown.body).toEqual(wrong.body);
  });

  test('five wrong tries close the name for a minute and say until when, then for longer; others can sign in', async () => {
    const house = memoryHouse();
    const { app, owner } = await openedHouse(house);
    await owner.post('/api/people', tobin);
    const tablet = new Tablet(app);
    const wrong = () => tablet.post('/api/sign-in', { name: 'Tobin', passphrase: 'guess guess' });
    const right = () => tablet.post('/api/sign-in', { name: 'Tobin', passphrase: tobin.passphrase });
    for (let tries = 0; tries < 5; tries += 1) expect((await wrong()).status).toBe(401);
    const closed = await right();
    expect(closed.status).toBe(429);
    expect(closed.headers.get('retry-after')).toBe('60');
    expect(closed.body['facts']).toEqual({ opensAt: '2026-03-02T08:01:00.000Z', minutes: 1 });
    expect(closed.body['now']).toMatch(/opens again within a minute \(08:01 UTC\)/);
    expect(
      (await new Tablet(app).post('/api/sign-in', { name: 'Mirela', passphrase: ownersPassphrase })).status,
    ).toBe(200);
    house.setClock('2026-03-02T08:01:00.000Z');
    expect((await wrong()).status).toBe(401);
    expect((await right()).body['facts']).toMatchObject({ opensAt: '2026-03-02T08:03:00.000Z', minutes: 2 });
    house.setClock('2026-03-02T08:03:00.000Z');
    expect((await right()).status).toBe(200);
  });

  test('many tries at once are counted one by one', async () => {
    const { app } = await openedHouse(memoryHouse());
    const tries = await Promise.all(
      Array.from({ length: 12 }, () =>
        new Tablet(app).post('/api/sign-in', { name: 'Mirela', passphrase: 'guess guess' }),
      ),
    );
    expect(tries.filter(({ status }) => status === 401)).toHaveLength(5);
    expect(tries.filter(({ status }) => status === 429)).toHaveLength(7);
  });

  test('a session ends after a day without a touch, and after a week in any case', async () => {
    const house = memoryHouse();
    const { owner } = await openedHouse(house);
    house.setClock(hoursOn(11));
    expect((await owner.get('/api/people')).status).toBe(200);
    house.setClock(hoursOn(22));
    expect((await owner.get('/api/people')).status).toBe(200);
    house.setClock(hoursOn(35));
    expect(await owner.get('/api/people')).toMatchObject({ status: 401, body: { code: 'signed-out' } });
    const third = memoryHouse();
    const { owner: busy } = await openedHouse(third);
    for (let hours = 8; hours <= 168; hours += 8) {
      third.setClock(hoursOn(hours));
      expect((await busy.get('/api/people')).status).toBe(200);
    }
    third.setClock(hoursOn(169));
    expect((await busy.get('/api/people')).status).toBe(401);
  });

  test('signing out ends the session for good, also for whoever copied the cookie', async () => {
    const { owner, app } = await openedHouse(memoryHouse());
    const copied = new Tablet(app);
    copied.cookie = owner.cookie;
    expect((await copied.get('/api/people')).status).toBe(200);
    await owner.post('/api/sign-out');
    expect((await copied.get('/api/people')).status).toBe(401);
  });

  test('the cookie is for this server alone and for no script, and behind TLS never travels without it', async () => {
    const sign = async (secure: boolean) => {
      const { app } = await openedHouse(memoryHouse(), { secure });
      const answer = await new Tablet(app).ask('/api/sign-in', {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ name: 'Mirela', passphrase: ownersPassphrase }),
      });
      return answer.headers.get('set-cookie') ?? '';
    };
    expect(await sign(false)).toMatch(
      /^wefthouse=[\w-]{43}; Max-Age=604800; Path=\/; HttpOnly; SameSite=Strict$/,
    );
    expect(await sign(true)).toMatch(/^__Host-wefthouse=[\w-]{43}; .*HttpOnly; Secure; SameSite=Strict$/);
  });
});

describe('switching by PIN on a shared tablet', () => {
  test('a PIN hands the tablet over, for work but not for people and settings', async () => {
    const { app, owner, person } = await openedHouse(memoryHouse());
    await owner.post('/api/people', tobin);
    await owner.put(`/api/people/${person}/secret`, { pin: '9173' });
    const tablet = new Tablet(app);
    await tablet.post('/api/sign-in', { name: 'Tobin', passphrase: tobin.passphrase });
    const switched = await tablet.post('/api/switch', { person, pin: '9173' });
    expect(switched).toMatchObject({ status: 200, body: { signedIn: { name: 'Mirela' } } });
    expect((await tablet.get('/api/state')).body).toMatchObject({ byPin: true });
    const settings = await tablet.post('/api/settings', { settings: { name: 'Elsewhere' } });
    expect(settings).toMatchObject({ status: 403, body: { code: 'passphrase-needed' } });
  });

  test('a PIN alone opens nothing, and guessing it closes the person', async () => {
    const { app, owner } = await openedHouse(memoryHouse());
    await owner.post('/api/people', tobin);
    const stranger = new Tablet(app);
    expect((await stranger.post('/api/switch', { person: 'tobin', pin: '2846' })).status).toBe(401);
    for (const pin of ['0001', '0002', '0003', '0004', '0005']) {
      expect((await owner.post('/api/switch', { person: 'tobin', pin })).body['code']).toBe(
        'sign-in-refused',
      );
    }
    expect((await owner.post('/api/switch', { person: 'tobin', pin: '2846' })).status).toBe(429);
    expect((await owner.get('/api/state')).body).toMatchObject({ signedIn: { name: 'Mirela' } });
  });

  test('a PIN that anybody would try first is refused', async () => {
    const { owner } = await openedHouse(memoryHouse());
    for (const pin of ['1234', '4321', '0000', '123', '123456789', '12a4', '１２８４']) {
      const { status, body } = await owner.post('/api/people', { ...tobin, pin });
      expect({ pin, status, code: body['code'] }).toEqual({ pin, status: 422, code: 'pin-too-simple' });
    }
  });
});

describe('people and roles', () => {
  test('only an owner adds people and changes settings', async () => {
    const { app, owner } = await openedHouse(memoryHouse());
    expect((await owner.post('/api/people', tobin)).status).toBe(200);
    const washer = new Tablet(app);
    await washer.post('/api/sign-in', { name: 'Tobin', passphrase: tobin.passphrase });
    const added = await washer.post('/api/people', { ...tobin, person: 'ines', name: 'Ines' });
    expect(added).toMatchObject({ status: 403, body: { code: 'role-needed' } });
    expect((await washer.post('/api/settings', { settings: { currency: 'CHF' } })).status).toBe(403);
    expect((await washer.post('/api/safekeeping/verify')).status).toBe(403);
    expect((await owner.post('/api/settings', { settings: { currency: 'CHF' } })).body).toMatchObject({
      settings: { currency: 'CHF', name: 'Fern Lane' },
    });
  });

  test('two people cannot share a name, and the last owner cannot leave', async () => {
    const { owner, person } = await openedHouse(memoryHouse());
    expect((await owner.post('/api/people', { ...tobin, name: 'MIRELA' })).body['code']).toBe('name-in-use');
    const leaving = await owner.put(`/api/people/${person}`, {
      name: 'Mirela',
      roles: ['owner'],
      left: true,
    });
    expect(leaving).toMatchObject({ status: 409, body: { code: 'last-owner' } });
    const lesser = await owner.put(`/api/people/${person}`, { name: 'Mirela', roles: ['washer'] });
    expect(lesser.body['code']).toBe('last-owner');
  });

  test('who leaves is signed out everywhere at once', async () => {
    const { app, owner } = await openedHouse(memoryHouse());
    await owner.post('/api/people', tobin);
    const washer = new Tablet(app);
    await washer.post('/api/sign-in', { name: 'Tobin', passphrase: tobin.passphrase });
    await owner.put('/api/people/tobin', { name: 'Tobin', roles: ['washer'], left: true });
    expect((await washer.get('/api/today')).status).toBe(401);
    expect((await washer.post('/api/sign-in', { name: 'Tobin', passphrase: tobin.passphrase })).status).toBe(
      401,
    );
  });

  test('a new passphrase ends the other sessions of its person and keeps the present one', async () => {
    const { app, owner, person } = await openedHouse(memoryHouse());
    const other = new Tablet(app);
    await other.post('/api/sign-in', { name: 'Mirela', passphrase: ownersPassphrase });
    const changed = await owner.put(`/api/people/${person}/secret`, { passphrase: 'a quite different one' });
    expect(changed.status).toBe(200);
    expect((await owner.get('/api/people')).status).toBe(200);
    expect((await other.get('/api/people')).status).toBe(401);
  });

  test('nobody changes the secret of another without being an owner', async () => {
    const { app, owner, person } = await openedHouse(memoryHouse());
    await owner.post('/api/people', tobin);
    const washer = new Tablet(app);
    await washer.post('/api/sign-in', { name: 'Tobin', passphrase: tobin.passphrase });
    expect((await washer.put(`/api/people/${person}/secret`, { passphrase: 'now it is mine' })).status).toBe(
      403,
    );
    expect((await washer.put('/api/people/tobin/secret', { pin: '5820' })).status).toBe(200);
  });

  test('no answer holds a hash of a passphrase or PIN', async () => {
    const { owner } = await openedHouse(memoryHouse());
    await owner.post('/api/people', tobin);
    for (const path of ['/api/state', '/api/people']) {
      expect(JSON.stringify((await owner.get(path)).body)).not.toMatch(/argon|\$/);
    }
  });
});

describe('requests from elsewhere', () => {
  test.each([
    ['another site', { origin: 'https://elsewhere.example' }],
    ['another port of this machine', { origin: 'http://localhost:9999' }],
    ['a page without an origin', { origin: 'null' }],
    [
      'another site, by the browser’s own word',
      { origin: 'http://localhost:8470', 'sec-fetch-site': 'cross-site' },
    ],
    ['nowhere', { origin: '' }],
  ])('a write from %s is refused', async (_, headers) => {
    const { owner } = await openedHouse(memoryHouse());
    const answer = await owner.ask('/api/settings', {
      method: 'POST',
      headers: { ...headers, 'content-type': 'application/json' },
      body: JSON.stringify({ settings: { name: 'Elsewhere' } }),
    });
    expect(answer.status).toBe(403);
    expect(await answer.json()).toMatchObject({ code: 'foreign-origin' });
    expect((await owner.get('/api/state')).body).toMatchObject({ settings: { name: 'Fern Lane' } });
  });

  test('everything but state and signing in asks for a session', async () => {
    const { app } = await openedHouse(memoryHouse());
    const stranger = new Tablet(app);
    for (const path of [
      'people',
      'rugs',
      'rugs/1',
      'today',
      'clients',
      'clients/1',
      'changes',
      'photographs/a/shown',
      'rugs/1/export.zip',
      'rugs/1/papers/consent.pdf',
      'nothing',
    ]) {
      expect({ path, status: (await stranger.get(`/api/${path}`)).status }).toEqual({ path, status: 401 });
    }
  });
});
