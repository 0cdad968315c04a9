import { mkdir } from 'node:fs/promises';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect } from 'vitest';
import { openBrowser, openPage, phone, tabletSized } from '../../../support/browser.ts';
import { type BuiltServer, startBuilt } from '../../../support/builtServer.ts';
import { Hand } from './hand.ts';

export { phone, tabletSized };

/** Where a failed journey leaves what its screens showed. */
const pictures = '.cache/journeys';
/** Nothing takes so long on a screen, however busy the machine is. */
const waitMs = 20_000;

const opened = <Thing>(thing: Thing | undefined): Thing => {
  if (thing === undefined) throw new Error('The workshop is not open yet.');
  return thing;
};

interface Device {
  readonly page: Page;
  readonly faults: readonly string[];
}

/** One server and one browser for all journeys of a file; each journey has devices of its own. */
export function openWorkshop(which: 'serve' | 'demo' = 'serve') {
  let server: BuiltServer | undefined;
  let browser: Browser | undefined;
  let devices: Device[] = [];

  beforeAll(async () => {
    [server, browser] = await Promise.all([startBuilt(which), openBrowser()]);
  }, 180_000);

  afterEach(async ({ task }) => {
    const used = devices;
    devices = [];
    if (task.result?.state === 'fail') {
      await mkdir(pictures, { recursive: true });
      const name = task.name.replace(/\W+/g, '-').toLowerCase();
      for (const [index, { page }] of used.entries())
        await page.screenshot({ path: `${pictures}/${name}-${index + 1}.png`, fullPage: true });
    }
    await Promise.all(used.map(({ page }) => page.context().close()));
    // What a person would not see but should not be there.
    expect(used.flatMap(({ faults }) => faults)).toEqual([]);
  });

  afterAll(async () => {
    await browser?.close();
    await server?.stop();
  });

  return {
    server: (): BuiltServer => opened(server),
    /** Another phone or tablet, with cookies and a memory of its own, at the door of the house. */
    device: async (device: BrowserContextOptions): Promise<Hand> => {
      const { page, faults } = await openPage(opened(browser), opened(server).address, device);
      devices.push({ page, faults });
      page.setDefaultTimeout(waitMs);
      await page.goto('/');
      return new Hand(page);
    },
  };
}
