import { randomBytes } from 'node:crypto';
import type { Ids } from '../../ports/ids.ts';

/**
 * UUIDs of version 7: 48 bits of milliseconds, then 12 bits that count within the millisecond so that ids of
 * one process stay in order, then chance (RFC 9562, sections 5.7 and 6.2, method 1).
 */
export function uuidv7(nowMs: () => number = Date.now): Ids {
  let lastMs = -1;
  let count = 0;
  return {
    next() {
      const now = nowMs();
      if (now > lastMs) {
        lastMs = now;
        count = randomBytes(2).readUInt16BE() & 0x7ff;
      } else {
        // A clock set back, or a full millisecond: go on from the last one.
        count += 1;
        if (count > 0xfff) {
          lastMs += 1;
          count = 0;
        }
      }
      const bytes = randomBytes(16);
      bytes.writeUIntBE(lastMs, 0, 6);
      bytes.writeUInt16BE(0x7000 | count, 6);
      bytes.writeUInt8(0x80 | (bytes.readUInt8(8) & 0x3f), 8);
      const hex = bytes.toString('hex');
      return [
        [0, 8],
        [8, 12],
        [12, 16],
        [16, 20],
        [20, 32],
      ]
        .map(([from, until]) => hex.slice(from, until))
        .join('-');
    },
  };
}
