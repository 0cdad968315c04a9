import { mkdir } from 'node:fs/promises';
import { type Browser, type BrowserContext, type BrowserContextOptions, chromium } from 'playwright-core';
import { afterAll, afterEach, beforeAll } from 'vitest';
import { Hand } from './hand.ts';
import { openHouse, type RunningHouse } from './house.ts';

/** Sizes of the devices a workshop has. */
export const phone = { width: 390, height: 844 } as const;
export const tablet = { width: 1024, height: 768 } as const;

/** Where a failed journey leaves what its screens showed. */
const pictures = '.cache/journeys';
const waitMs = 30_000;

const flags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

const started = <Thing>(thing: Thing | undefined): Thing => {
  if (thing === undefined) throw new Error('The workshop is not open yet.');
  return thing;
};

/** One server and one browser for all journeys of a file; each journey has devices of its own. */
export function openWorkshop(which: 'new' | 'demo' = 'new') {
  let house: RunningHouse | undefined;
  let browser: Browser | undefined;
  let devices: BrowserContext[] = [];

  beforeAll(async () => {
    const executablePath = process.env['WEFTHOUSE_CHROMIUM'];
    if (executablePath === undefined)
      throw new Error('WEFTHOUSE_CHROMIUM does not say where the browser is.');
    [house, browser] = await Promise.all([
      openHouse(which),
      chromium.launch({ executablePath, args: flags }),
    ]);
  }, 120_000);

  afterEach(async ({ task }) => {
    if (task.result?.state === 'fail') {
      await mkdir(pictures, { recursive: true });
      const pages = devices.flatMap((device) => device.pages());
      const name = task.name.replace(/\W+/g, '-').toLowerCase();
      for (const [index, page] of pages.entries())
        await page.screenshot({ path: `${pictures}/${name}-${index + 1}.png`, fullPage: true });
    }
    await Promise.all(devices.map((device) => device.close()));
    devices = [];
  });

  afterAll(async () => {
    await browser?.close();
    await house?.close();
  });

  return {
    house: (): RunningHouse => started(house),
    /** Another phone or tablet, with cookies and a memory of its own, at the door of the house. */
    device: async (
      viewport: { readonly width: number; readonly height: number },
      options: BrowserContextOptions = {},
    ): Promise<Hand> => {
      const device = await started(browser).newContext({
        viewport,
        baseURL: started(house).address,
        ...options,
      });
      devices.push(device);
      device.setDefaultTimeout(waitMs);
      const page = await device.newPage();
      await page.goto('/');
      return new Hand(page);
    },
  };
}
