import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';

const flags = [
  ...['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-sync'],
  ...['--disable-background-networking', '--disable-component-update'],
];

/** The Chromium that `npm test` found; `WEFTHOUSE_CHROMIUM` says where another is. */
export const openBrowser = (): Promise<Browser> =>
  chromium.launch({ executablePath: process.env['WEFTHOUSE_CHROMIUM'] ?? '/usr/bin/chromium', args: flags });

export const phone = { viewport: { width: 390, height: 844 }, hasTouch: true } as const;
export const tabletSized = { viewport: { width: 1024, height: 768 }, hasTouch: true } as const;

/** A page of its own device, with everything a person would not see but should not be there. */
export async function openPage(
  browser: Browser,
  address: string,
  device: BrowserContextOptions = tabletSized,
): Promise<{ readonly page: Page; readonly faults: readonly string[] }> {
  const page = await (await browser.newContext({ baseURL: address, ...device })).newPage();
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(error.message));
  page.on('console', (message) => {
    // A refusal is answered with a status of its own, which the browser also logs; that is no fault.
    if (message.type() === 'error' && !/status of (4\d\d|503)/.test(message.text()))
      faults.push(message.text());
  });
  return { page, faults };
}
