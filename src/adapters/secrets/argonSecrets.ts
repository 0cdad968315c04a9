import { createHash, randomBytes } from 'node:crypto';
import { hash, verify } from '@node-rs/argon2';
import type { Secrets } from '../../ports/secrets.ts';

export interface ArgonCost {
  readonly memoryKiB: number;
  readonly passes: number;
}

/** The least that OWASP's password storage guidance asks of argon2id: 19 MiB, two passes, one lane. */
const usualCost: ArgonCost = { memoryKiB: 19_456, passes: 2 };

/** Letters and digits that are not taken for one another when read out: Crockford's base 32. */
const spokenLetters = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';

/** Secrets by argon2id and the machine's own chance. */
export function argonSecrets(cost: ArgonCost = usualCost): Secrets {
  const options = { memoryCost: cost.memoryKiB, timeCost: cost.passes, parallelism: 1 };
  const hashOf = (secret: string): Promise<string> => hash(secret.normalize('NFC'), options);
  let nobodys: Promise<string> | undefined;
  return {
    hash: hashOf,
    async matches(secret, known) {
      nobodys ??= hashOf(randomBytes(16).toString('hex'));
      const same = await verify(known ?? (await nobodys), secret.normalize('NFC'));
      return known !== null && same;
    },
    token: () => randomBytes(32).toString('base64url'),
    digest: (token) => createHash('sha256').update(token).digest('hex'),
    spokenCode: () =>
      Array.from(randomBytes(8), (byte) => spokenLetters[byte % 32])
        .join('')
        .replace(/^..../, '$&-'),
  };
}
