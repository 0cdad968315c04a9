import { createPrivateKey, generateKeyPairSync, type KeyObject, X509Certificate } from 'node:crypto';
import { readFile, writeFile } from 'node:fs/promises';
import { BlockList, isIP } from 'node:net';
import { hostname, networkInterfaces } from 'node:os';
import { join } from 'node:path';
import { makeFolder } from '../disk/folder.ts';
import { makeCertificate } from './certificate.ts';

export interface ServerIdentity {
  readonly certificate: string;
  readonly key: string;
  /** The authority tablets are asked to trust. */
  readonly authority: { readonly certificate: string; readonly fingerprint: string };
  /** Names and addresses the certificate is good for. */
  readonly hosts: readonly string[];
}

const dayMs = 24 * 3600 * 1000;
/** Apple's devices take no server certificate that lasts longer than 825 days, public ones 398. */
const serverDays = 397;
const authorityDays = 3650;
const renewWithinDays = 30;
const nameStart = 'Wefthouse on ';

/** Addresses of private networks: for no other may this authority ever vouch, wherever it is trusted. */
const privateRanges = [
  ...['10.0.0.0/8', '172.16.0.0/12', '192.168.0.0/16', '127.0.0.0/8', '169.254.0.0/16', '100.64.0.0/10'],
  ...['fc00::/7', 'fe80::/10', '::1/128'],
];

const isPrivate = new BlockList();
for (const range of privateRanges) {
  const [network = '', prefix = '0'] = range.split('/');
  isPrivate.addSubnet(network, Number(prefix), network.includes(':') ? 'ipv6' : 'ipv4');
}

/** Every name and address by which this machine is reached. */
export function ownHosts(): readonly string[] {
  const addresses = Object.values(networkInterfaces()).flatMap((found) => found ?? []);
  const name = hostname().toLowerCase();
  const names = ['localhost', name, `${name.replace(/\.local$/, '')}.local`];
  return [...new Set([...names, ...addresses.map(({ address }) => address.replace(/%.*$/, ''))])];
}

/** Those hosts the authority may vouch for: one name too many would make the whole certificate void. */
const vouchedFor = (hosts: readonly string[], ownName: string): readonly string[] =>
  hosts.filter((host) => {
    const version = isIP(host);
    if (version !== 0) return isPrivate.check(host, version === 6 ? 'ipv6' : 'ipv4');
    return [ownName, 'localhost', 'local'].some((name) => host === name || host.endsWith(`.${name}`));
  });

const freshKey = (): KeyObject => generateKeyPairSync('ec', { namedCurve: 'P-256' }).privateKey;
const pem = (key: KeyObject): string => key.export({ type: 'pkcs8', format: 'pem' }).toString();
const readText = (path: string): Promise<string | null> => readFile(path, 'utf8').catch(() => null);
const writeKey = (path: string, text: string): Promise<void> => writeFile(path, text, { mode: 0o600 });

/** The workshop's own authority, made on first use and kept; only private names and addresses are open to it. */
async function authorityIn(folder: string, now: Date) {
  const paths = { certificate: join(folder, 'authority.crt'), key: join(folder, 'authority.key') };
  const [kept, keptKey] = await Promise.all([readText(paths.certificate), readText(paths.key)]);
  if (kept !== null && keptKey !== null && Date.parse(new X509Certificate(kept).validTo) > now.getTime()) {
    const name = new X509Certificate(kept).subject.replace(/^CN=/, '');
    return { certificate: kept, name, key: createPrivateKey(keptKey) };
  }
  const key = freshKey();
  const name = `${nameStart}${hostname().toLowerCase()}`;
  const onlyNames = [...new Set([hostname().toLowerCase(), 'localhost', 'local'])];
  const certificate = makeCertificate({
    ...{ name, key, issuer: { name, key }, from: new Date(now.getTime() - dayMs) },
    until: new Date(now.getTime() + authorityDays * dayMs),
    as: { kind: 'authority', onlyNames, onlyRanges: privateRanges },
  });
  await writeKey(paths.key, pem(key));
  await writeFile(paths.certificate, certificate);
  return { certificate, name, key };
}

/** True while the kept certificate is the authority's, lasts, and names every host it should. */
function stillGood(text: string, authority: string, now: Date, hosts: readonly string[]): boolean {
  const certificate = new X509Certificate(text);
  const lasts = Date.parse(certificate.validTo) - now.getTime() > renewWithinDays * dayMs;
  const names = certificate.subjectAltName ?? '';
  const isNamed = (host: string): boolean =>
    host.includes(':') ? certificate.checkIP(host) !== undefined : names.includes(`:${host}`);
  return lasts && certificate.verify(new X509Certificate(authority).publicKey) && hosts.every(isNamed);
}

/** The server's certificate for all its present names and addresses, made anew when they change or it ends soon. */
export async function localIdentity(
  folder: string,
  now: Date,
  reachedBy: readonly string[] = ownHosts(),
): Promise<ServerIdentity> {
  makeFolder(folder);
  const authority = await authorityIn(folder, now);
  const hosts = vouchedFor(reachedBy, authority.name.slice(nameStart.length));
  const told = {
    certificate: authority.certificate,
    fingerprint: new X509Certificate(authority.certificate).fingerprint256,
  };
  const paths = { certificate: join(folder, 'server.crt'), key: join(folder, 'server.key') };
  const [kept, keptKey] = await Promise.all([readText(paths.certificate), readText(paths.key)]);
  if (kept !== null && keptKey !== null && stillGood(kept, authority.certificate, now, hosts)) {
    return { certificate: kept, key: keptKey, authority: told, hosts };
  }
  const key = freshKey();
  const certificate = makeCertificate({
    ...{ name: hostname(), key, issuer: authority, from: new Date(now.getTime() - dayMs) },
    until: new Date(now.getTime() + serverDays * dayMs),
    as: { kind: 'server', hosts },
  });
  await writeKey(paths.key, pem(key));
  await writeFile(paths.certificate, certificate);
  return { certificate, key: pem(key), authority: told, hosts };
}
