/** The few forms of DER (ITU-T X.690) that a certificate is made of. */

const lengthBytes = (length: number): readonly number[] => {
  if (length < 0x80) return [length];
  const bytes: number[] = [];
  for (let rest = length; rest > 0; rest = Math.floor(rest / 256)) bytes.unshift(rest % 256);
  return [0x80 | bytes.length, ...bytes];
};

/** One value: its tag, its length, its content. */
export const tagged = (tag: number, ...content: readonly Uint8Array[]): Buffer => {
  const whole = Buffer.concat(content);
  return Buffer.concat([Buffer.from([tag, ...lengthBytes(whole.length)]), whole]);
};

export const sequence = (...items: readonly Uint8Array[]): Buffer => tagged(0x30, ...items);
export const set = (...items: readonly Uint8Array[]): Buffer => tagged(0x31, ...items);
export const octets = (content: Uint8Array): Buffer => tagged(0x04, content);
export const truth = Buffer.from([0x01, 0x01, 0xff]);
export const utf8 = (text: string): Buffer => tagged(0x0c, Buffer.from(text));

/** Bits counted from the first; `unused` at the end of the last byte. */
export const bits = (content: Uint8Array, unused = 0): Buffer => tagged(0x03, Buffer.from([unused]), content);

/** A whole number that is not negative, from its bytes. */
export const whole = (bytes: Uint8Array): Buffer => {
  const first = bytes.findIndex((byte) => byte !== 0);
  const short = first === -1 ? Buffer.from([0]) : Buffer.from(bytes.subarray(first));
  return tagged(0x02, (short[0] ?? 0) >= 0x80 ? Buffer.concat([Buffer.from([0]), short]) : short);
};

/** An object identifier, from `2.5.29.17`. */
export const oid = (dotted: string): Buffer => {
  const [first = 0, second = 0, ...rest] = dotted.split('.').map(Number);
  const bytes = [first * 40 + second, ...rest].flatMap((arc) => {
    const sevens = [arc & 0x7f];
    for (let left = arc >> 7; left > 0; left >>= 7) sevens.unshift(0x80 | (left & 0x7f));
    return sevens;
  });
  return tagged(0x06, Buffer.from(bytes));
};

/** An instant as UTCTime up to 2049, as GeneralizedTime from then on (RFC 5280, 4.1.2.5). */
export const instant = (at: Date): Buffer => {
  const digits = at.toISOString().replace(/[-:T]/g, '').slice(0, 14);
  return at.getUTCFullYear() < 2050
    ? tagged(0x17, Buffer.from(`${digits.slice(2)}Z`))
    : tagged(0x18, Buffer.from(`${digits}Z`));
};

/** A value in a place that the form around it numbers: `within` wraps it, else it takes the place's tag. */
export const place = (number: number, content: Uint8Array, within: boolean): Buffer =>
  tagged((within ? 0xa0 : 0x80) | number, content);
