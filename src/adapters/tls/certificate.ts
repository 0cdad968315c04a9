import { createHash, createPublicKey, type KeyObject, randomBytes, sign } from 'node:crypto';
import { isIPv4, isIPv6 } from 'node:net';
import { bits, instant, octets, oid, place, sequence, set, truth, utf8, whole } from './der.ts';

/** A certificate to be made, in the terms of RFC 5280. */
export interface CertificateWish {
  readonly name: string;
  readonly key: KeyObject;
  readonly issuer: { readonly name: string; readonly key: KeyObject };
  readonly from: Date;
  readonly until: Date;
  readonly as:
    | {
        readonly kind: 'authority';
        readonly onlyNames: readonly string[];
        readonly onlyRanges: readonly string[];
      }
    | { readonly kind: 'server'; readonly hosts: readonly string[] };
}

const ecdsaWithSha256 = sequence(oid('1.2.840.10045.4.3.2'));
const spki = (key: KeyObject): Buffer => createPublicKey(key).export({ type: 'spki', format: 'der' });
/** RFC 5280, 4.2.1.2: SHA-1 only names the key here, nothing rests on it. */
const keyName = (key: KeyObject): Buffer => createHash('sha1').update(spki(key)).digest();
const named = (name: string): Buffer => sequence(set(sequence(oid('2.5.4.3'), utf8(name))));

const extension = (id: string, critical: boolean, content: Uint8Array): Buffer =>
  sequence(oid(id), ...(critical ? [truth] : []), octets(content));

/** Bytes of an address: 4 of version 4, 16 of version 6. */
export function addressBytes(address: string): Buffer {
  if (isIPv4(address)) return Buffer.from(address.split('.').map(Number));
  const [head = '', tail] = address.replace(/%.*$/, '').split('::');
  const groups = (part: string): readonly number[] =>
    part === '' ? [] : part.split(':').map((group) => Number.parseInt(group, 16));
  const [before, after] = [groups(head), groups(tail ?? '')];
  const zeros = tail === undefined ? [] : Array.from({ length: 8 - before.length - after.length }, () => 0);
  return Buffer.from([...before, ...zeros, ...after].flatMap((group) => [group >> 8, group & 0xff]));
}

/** Address and mask of a range such as `10.0.0.0/8`. */
function rangeBytes(range: string): Buffer {
  const [address = '', prefix = '0'] = range.split('/');
  const bytes = addressBytes(address);
  const mask = Buffer.from(
    bytes.map((_, index) => (0xff00 >> Math.min(8, Math.max(0, Number(prefix) - 8 * index))) & 0xff),
  );
  return Buffer.concat([bytes, mask]);
}

const isAddress = (host: string): boolean => isIPv4(host) || isIPv6(host.replace(/%.*$/, ''));
const general = (host: string): Buffer =>
  isAddress(host) ? place(7, addressBytes(host), false) : place(2, Buffer.from(host), false);

function extensionsOf({ as, key, issuer }: CertificateWish): readonly Buffer[] {
  const keys = [
    extension('2.5.29.14', false, octets(keyName(key))),
    extension('2.5.29.35', false, sequence(place(0, keyName(issuer.key), false))),
  ];
  if (as.kind === 'server') {
    return [
      extension('2.5.29.19', true, sequence()),
      extension('2.5.29.15', true, bits(Buffer.from([0x80]), 7)),
      extension('2.5.29.37', false, sequence(oid('1.3.6.1.5.5.7.3.1'))),
      extension('2.5.29.17', false, sequence(...as.hosts.map(general))),
      ...keys,
    ];
  }
  const permitted = [
    ...as.onlyNames.map((name) => sequence(place(2, Buffer.from(name), false))),
    ...as.onlyRanges.map((range) => sequence(place(7, rangeBytes(range), false))),
  ];
  return [
    extension('2.5.29.19', true, sequence(truth)),
    extension('2.5.29.15', true, bits(Buffer.from([0x06]), 1)),
    extension('2.5.29.30', true, sequence(place(0, Buffer.concat(permitted), true))),
    ...keys,
  ];
}

/** Makes and signs an X.509 certificate over an elliptic-curve key; PEM. */
export function makeCertificate(wish: CertificateWish): string {
  const { name, key, issuer, from, until } = wish;
  const serial = randomBytes(16);
  const tbs = sequence(
    place(0, whole(Buffer.from([2])), true),
    whole(serial),
    ecdsaWithSha256,
    named(issuer.name),
    sequence(instant(from), instant(until)),
    named(name),
    spki(key),
    place(3, sequence(...extensionsOf(wish)), true),
  );
  const der = sequence(tbs, ecdsaWithSha256, bits(sign('sha256', tbs, issuer.key)));
  const lines = der.toString('base64').match(/.{1,64}/g) ?? [];
  return `-----BEGIN CERTIFICATE-----\n${lines.join('\n')}\n-----END CERTIFICATE-----\n`;
}
