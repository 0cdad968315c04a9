import * as z from 'zod/mini';
import type { Entry } from './entry.ts';
import { type Frozen, fact, id, line, passage, sha256 } from './facts/shape.ts';

const person = {
  name: line,
  phone: z.optional(line),
  email: z.optional(z.string().check(z.trim(), z.regex(/^\S+@\S+\.\S+$/), z.maxLength(200))),
  address: z.optional(passage),
  note: z.optional(passage),
};
const unit = z.number().check(z.gte(-0.05), z.lte(1.05));

/** A client's personal data stand only here, encrypted under the client's own key. */
export const clientFacts = {
  ClientAdded: fact('ClientAdded', person),
  ClientChanged: fact('ClientChanged', person),
  /** Pen strokes in 0 … 1 of the pad; none when the name was typed under a statement instead. */
  SignatureTaken: fact('SignatureTaken', {
    signature: id,
    name: line,
    statement: passage,
    strokes: z.array(z.array(z.tuple([unit, unit])).check(z.maxLength(5000))).check(z.maxLength(200)),
    /** SHA-256 of the paper that was shown, where one was. */
    paper: z.optional(sha256),
  }),
};

export type ClientFactType = keyof typeof clientFacts;
export type ClientFactOf<Type extends ClientFactType> = Frozen<z.infer<(typeof clientFacts)[Type]>>;
export type ClientFact = { [Type in ClientFactType]: ClientFactOf<Type> }[ClientFactType];
export type ClientEntry = Entry<ClientFact>;

export type Signature = ClientFactOf<'SignatureTaken'> & { readonly when: string };

/** What a client's stream amounts to now. `erased` when its key is gone. */
export type ClientStanding =
  | { readonly kind: 'erased' }
  | {
      readonly kind: 'known';
      readonly name: string;
      readonly phone?: string | undefined;
      readonly email?: string | undefined;
      readonly address?: string | undefined;
      readonly note?: string | undefined;
      readonly signatures: Readonly<Record<string, Signature>>;
    };

/**
 * Folds a client's entries; null when there are none.
 *
 * @param entries - the stream, oldest first; entries whose facts cannot be read count as erased
 * @source none: rule of this project
 */
export function clientStanding(entries: readonly Entry[]): ClientStanding | null {
  if (entries.length === 0) return null;
  let standing = null as Extract<ClientStanding, { kind: 'known' }> | null;
  for (const entry of entries as readonly ClientEntry[]) {
    const recorded = entry.fact;
    switch (recorded.type) {
      case 'ClientAdded':
      case 'ClientChanged': {
        const { type: _type, happenedAt: _happenedAt, ...facts } = recorded;
        standing = { kind: 'known', signatures: standing?.signatures ?? {}, ...facts };
        break;
      }
      case 'SignatureTaken':
        if (standing !== null) {
          const signature = { ...recorded, when: recorded.happenedAt ?? entry.at };
          standing = {
            ...standing,
            signatures: { ...standing.signatures, [recorded.signature]: signature },
          };
        }
        break;
      default:
        return { kind: 'erased' };
    }
  }
  return standing ?? { kind: 'erased' };
}
