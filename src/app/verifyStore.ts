import { createHash } from 'node:crypto';
import type { VerifyProgress } from '../contract/index.ts';
import type { RugEntry } from '../dossier/facts/index.ts';
import type { Verification } from '../ports/ledger.ts';
import { photosIn } from './decideDrafts.ts';
import type { House } from './house.ts';

export interface StoreVerification extends Verification {
  readonly photographs: {
    readonly checked: number;
    /** Named by an entry, but not in the store. */
    readonly missing: readonly string[];
    /** In the store, but not the bytes they are named after. */
    readonly altered: readonly string[];
  };
}

const soundness = async ({ photos }: House, photo: string): Promise<'sound' | 'missing' | 'altered'> => {
  const original = await photos.read(photo, 'original');
  if (original === null) return 'missing';
  return createHash('sha256').update(original.bytes).digest('hex') === photo ? 'sound' : 'altered';
};

/**
 * Checks every seal, and every photograph that an entry names; of the whole store or of one rug.
 *
 * @param told - hears how far it is: first through the seals, then through the dossiers' photographs
 */
export async function verifyStore(
  house: House,
  rug?: string,
  told: (progress: VerifyProgress) => void = () => {},
): Promise<StoreVerification> {
  const stream = rug === undefined ? undefined : `rug/${rug}`;
  const verification = await house.ledger.verify(stream, (done, of) => told({ doing: 'seals', done, of }));
  const streams = stream === undefined ? await house.ledger.streams('rug') : [stream];
  const seen = new Map<string, Awaited<ReturnType<typeof soundness>>>();
  for (const [done, name] of streams.entries()) {
    told({ doing: 'photographs', done, of: streams.length });
    for (const { fact } of (await house.ledger.read(name)) as readonly RugEntry[]) {
      for (const photo of photosIn(fact)) {
        if (!seen.has(photo)) seen.set(photo, await soundness(house, photo));
      }
    }
  }
  const found = (state: 'missing' | 'altered') =>
    [...seen].flatMap(([photo, known]) => (known === state ? [photo] : []));
  const photographs = { checked: seen.size, missing: found('missing'), altered: found('altered') };
  return { ...verification, photographs };
}

export const isSound = ({ broken, photographs }: StoreVerification): boolean =>
  broken.length === 0 && photographs.missing.length === 0 && photographs.altered.length === 0;
