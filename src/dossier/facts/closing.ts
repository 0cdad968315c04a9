import * as z from 'zod/mini';
import { fact, fractionOfOne, id, line, massKg, money, passage, sha256 } from './shape.ts';

const quoteLine = z.object({ words: line, amount: money });

export const finishingWorks = [
  'pile set',
  'fringe groomed',
  'vacuumed',
  'ends secured',
  'sides repaired',
  'reknotted',
  'moth-proofed',
  'blocked',
  'other',
] as const;

/** Price, finish, inspection, money and the way home. */
export const closingFacts = {
  PriceQuoted: fact('PriceQuoted', {
    lines: z.array(quoteLine).check(z.minLength(1)),
    notToExceed: money,
    note: z.optional(passage),
  }),
  DepositTaken: fact('DepositTaken', { amount: money, means: line }),
  InvoiceIssued: fact('InvoiceIssued', { number: line, lines: z.array(quoteLine).check(z.minLength(1)) }),
  PaymentTaken: fact('PaymentTaken', { amount: money, means: line }),
  FinishingDone: fact('FinishingDone', {
    works: z.array(z.enum(finishingWorks)).check(z.minLength(1)),
    note: z.optional(passage),
  }),
  /** Every mark from the door is looked at again; new ones are recorded as marks of their own. */
  RugInspected: fact('RugInspected', {
    marks: z.array(
      z.object({
        mark: id,
        outcome: z.enum(['unchanged', 'improved', 'worse', 'new']),
        note: z.optional(passage),
      }),
    ),
    odour: z.enum(['none', 'slight', 'strong']),
    colour: z.enum(['unchanged', 'cleaner', 'changed']),
    note: z.optional(passage),
  }),
  RugReturned: fact('RugReturned', {
    to: line,
    /** What was compared at the hand-back to be sure it is the same rug. */
    identity: z.object({
      tag: z.boolean(),
      size: z.boolean(),
      mass: z.enum(['agrees', 'differs', 'not weighed']),
      picture: z.boolean(),
    }),
    massKg: z.optional(massKg),
    airRh: z.optional(fractionOfOne),
    /** Why it goes home although something does not agree. */
    difference: z.optional(passage),
    /** A rug whose work was declined may go home from quarantine: how it was packed, and what was said. */
    inQuarantine: z.optional(passage),
    signature: id,
    photos: z.array(sha256),
  }),
  /** No work is done any more, at any stage; the rug waits to be handed back. */
  VisitDeclined: fact('VisitDeclined', { reason: passage, wishOf: z.enum(['workshop', 'client']) }),
};
