import type { House } from '../../src/app/house.ts';
import { type AppSettings, makeApp } from '../../src/http/makeApp.ts';

export const setUpCode = 'K7QM-2X9T';
export const ownersPassphrase = 'madder indigo weld walnut';

const address = 'http://localhost:8470';

export interface Answered {
  readonly status: number;
  readonly headers: Headers;
  readonly body: Readonly<Record<string, unknown>>;
}

type App = ReturnType<typeof makeApp>;

export const appOf = (house: House, settings: Partial<AppSettings> = {}): App =>
  makeApp(house, {
    ...{ setUpCode, screens: null, secure: false, authority: null, backup: null },
    complain: (error) => {
      throw error;
    },
    ...settings,
  });

/** A device with its own cookies that speaks to the server as the screens do. */
export class Tablet {
  readonly #app: App;
  #cookie = '';

  constructor(app: App) {
    this.#app = app;
  }

  async ask(path: string, init: RequestInit = {}): Promise<Response> {
    const headers = new Headers({ host: 'localhost:8470', origin: address, ...init.headers });
    if (this.#cookie !== '') headers.set('cookie', this.#cookie);
    const response = await this.#app.request(`${address}${path}`, { ...init, headers });
    const given = response.headers.get('set-cookie');
    if (given !== null) this.#cookie = given.split(';')[0] ?? '';
    return response;
  }

  async #json(path: string, init: RequestInit): Promise<Answered> {
    const response = await this.ask(path, init);
    return {
      status: response.status,
      headers: response.headers,
      body: (await response.json()) as Answered['body'],
    };
  }

  get(path: string): Promise<Answered> {
    return this.#json(path, {});
  }

  post(path: string, body: unknown = {}): Promise<Answered> {
    const headers = { 'content-type': 'application/json' };
    return this.#json(path, { method: 'POST', headers, body: JSON.stringify(body) });
  }

  put(path: string, body: unknown): Promise<Answered> {
    const headers = { 'content-type': 'application/json' };
    return this.#json(path, { method: 'PUT', headers, body: JSON.stringify(body) });
  }

  get cookie(): string {
    return this.#cookie;
  }

  set cookie(cookie: string) {
    this.#cookie = cookie;
  }
}

/** The owner's tablet in a house that was just set up. */
export async function openedHouse(house: House, settings: Partial<AppSettings> = {}) {
  const app = appOf(house, settings);
  const owner = new Tablet(app);
  const request = {
    code: setUpCode,
    name: 'Mirela',
    passphrase: ownersPassphrase,
    workshopName: 'Fern Lane',
  };
  const { status, body } = await owner.post('/api/first-owner', request);
  if (status !== 200) throw new Error(JSON.stringify(body));
  return { app, owner, person: (body['signedIn'] as { readonly person: string }).person };
}
