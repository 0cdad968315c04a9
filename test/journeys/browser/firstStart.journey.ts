import { statSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openBrowser, openPage, phone } from '../../support/browser.ts';
import { type BuiltServer, startBuilt } from '../../support/builtServer.ts';
import { throwAwayFolder } from '../../support/openInFolder.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

const passphrase = 'four walnut shells in rain';

async function openTheHouse(server: BuiltServer, device = phone, context = {}) {
  const { page, faults } = await openPage(browser, server.address, { ...device, ...context });
  await page.goto('/');
  await page.getByLabel('One-time code').fill(server.setUpCode ?? '');
  await page.getByLabel('Name of the workshop').fill('Fern Lane Rug Care');
  await page.getByLabel('Your name').fill('Mirela');
  await page.getByLabel(/^Passphrase(?! once)/).fill(passphrase);
  await page.getByLabel(/^Passphrase once more/).fill(passphrase);
  await page.getByRole('button', { name: 'Open the house' }).click();
  await page.getByRole('navigation').first().waitFor();
  return { page, faults };
}

test('an owner opens the house on a phone with the code of the terminal, and is still known after a restart', async () => {
  const { folder, remove } = throwAwayFolder();
  try {
    const first = await startBuilt('serve', [], folder);
    const { page, faults } = await openTheHouse(first);
    expect(faults).toEqual([]);
    expect(await first.stop()).toBe(0);
    const second = await startBuilt('serve', ['--port', new URL(first.address).port], folder);
    expect(second.setUpCode).toBeNull();
    await page.reload();
    await page.getByRole('navigation').first().waitFor();
    await second.stop();
  } finally {
    remove();
  }
});

test('a second server on the same folder is refused in words', async () => {
  const server = await startBuilt('serve');
  await expect(startBuilt('serve', [], server.folder)).rejects.toThrow(
    /Another Wefthouse server is working on/,
  );
  await server.stop();
});

test('on the network the page comes over TLS, and the trust page shows the terminal’s fingerprint', async () => {
  const server = await startBuilt('serve', ['--host', '0.0.0.0']);
  const port = new URL(server.address).port;
  const local = { ...server, address: `https://localhost:${port}` };
  const { page, faults } = await openTheHouse(local, phone, { ignoreHTTPSErrors: true });
  await page.goto('/trust');
  expect(await page.locator('code').first().textContent()).toBe(server.fingerprint);
  const loading = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Take the certificate' }).click();
  expect((await loading).suggestedFilename()).toBe('wefthouse-authority.crt');
  expect(statSync(join(server.folder, 'tls', 'authority.key')).mode & 0o077).toBe(0);
  expect(faults).toEqual([]);
  await server.stop();
});
