import { X509Certificate } from 'node:crypto';
import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { createServer, get } from 'node:https';
import type { AddressInfo } from 'node:net';
import { hostname, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { addressBytes } from './certificate.ts';
import { localIdentity } from './localAuthority.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'wefthouse-tls-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const now = new Date();
const later = (days: number): Date => new Date(now.getTime() + days * 24 * 3600 * 1000);
const ownName = hostname().toLowerCase();
const hosts = ['localhost', ownName, 'loom.local', '127.0.0.1', '192.168.1.20', '::1', 'fd00::12'];

/** Asks a server over TLS that trusts nobody but the given authority. */
const ask = (port: number, ca: string, host: string) =>
  new Promise<string>((answer, fail) => {
    get({ port, host: '127.0.0.1', servername: host, ca, path: '/' }, (response) => {
      response.setEncoding('utf8').on('data', answer);
    }).on('error', fail);
  });

const serving = async (
  identity: { certificate: string; key: string },
  doing: (port: number) => Promise<void>,
) => {
  const server = createServer({ cert: identity.certificate, key: identity.key }, (_, answer) =>
    answer.end('woven'),
  );
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  try {
    await doing((server.address() as AddressInfo).port);
  } finally {
    server.close();
  }
};

test('a tablet that trusts the authority speaks to the server by each of its names, and another does not', async () => {
  const identity = await localIdentity(folder, now, hosts);
  await serving(identity, async (port) => {
    expect(await ask(port, identity.authority.certificate, 'localhost')).toBe('woven');
    expect(await ask(port, identity.authority.certificate, ownName)).toBe('woven');
    expect(await ask(port, identity.authority.certificate, 'loom.local')).toBe('woven');
    await expect(ask(port, identity.authority.certificate, 'elsewhere')).rejects.toThrow(/altnames/i);
    const other = await localIdentity(join(folder, 'other'), now, hosts);
    await expect(ask(port, other.authority.certificate, 'localhost')).rejects.toThrow();
  });
});

test('the certificates say what RFC 5280 asks of an authority and of a server', async () => {
  const identity = await localIdentity(folder, now, hosts);
  const authority = new X509Certificate(identity.authority.certificate);
  const server = new X509Certificate(identity.certificate);
  expect(authority.ca).toBe(true);
  expect(server.ca).toBe(false);
  expect(server.checkIssued(authority)).toBe(true);
  expect(server.verify(authority.publicKey)).toBe(true);
  for (const address of ['127.0.0.1', '192.168.1.20', '::1', 'fd00::12'])
    expect(server.checkIP(address)).toBeTruthy();
  expect(server.keyUsage).toEqual(['1.3.6.1.5.5.7.3.1']);
  const days = (Date.parse(server.validTo) - Date.parse(server.validFrom)) / 86_400_000;
  expect(days).toBeLessThanOrEqual(398);
});

test('authority and certificate are kept; a new address or a near end makes a new certificate under the same authority', async () => {
  const first = await localIdentity(folder, now, hosts);
  expect((await localIdentity(folder, later(1), hosts)).certificate).toBe(first.certificate);
  const moved = await localIdentity(folder, later(2), [...hosts, '10.0.0.9']);
  expect(moved.certificate).not.toBe(first.certificate);
  expect(moved.authority).toEqual(first.authority);
  const renewed = await localIdentity(folder, later(390), [...hosts, '10.0.0.9']);
  expect(renewed.certificate).not.toBe(moved.certificate);
  expect(renewed.authority).toEqual(first.authority);
});

test('public names and addresses are left out, so that the authority can never vouch for the world outside', async () => {
  const identity = await localIdentity(folder, now, [...hosts, '203.0.113.7', '2001:db8::7', 'example.org']);
  expect(identity.hosts).toEqual(hosts);
  await serving(identity, async (port) => {
    expect(await ask(port, identity.authority.certificate, 'localhost')).toBe('woven');
    await expect(ask(port, identity.authority.certificate, 'example.org')).rejects.toThrow(/altnames/i);
  });
});

test('nobody but the owner of the folder can read the keys', async () => {
  await localIdentity(folder, now, hosts);
  for (const key of ['authority.key', 'server.key']) expect(statSync(join(folder, key)).mode & 0o077).toBe(0);
});

test('addresses of version 6 are written out in full', () => {
  expect(addressBytes('fe80::1%eth0').toString('hex')).toBe('fe800000000000000000000000000001');
  expect(addressBytes('::1').toString('hex')).toBe('00000000000000000000000000000001');
  expect(addressBytes('2001:db8:0:1:2:3:4:5').toString('hex')).toBe('20010db8000000010002000300040005');
});
