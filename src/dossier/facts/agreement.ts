import * as z from 'zod/mini';
import { agents, ruleIds, signatories } from '../../core/wash/index.ts';
import { acidity, fact, id, instant, line, money, passage, sha256 } from './shape.ts';

/** How a client agreed. What was shown is named by its hash, since the plan often exists days after receipt. */
const agreedBy = z.discriminatedUnion('how', [
  z.object({ how: z.literal('signature on screen'), signature: id }),
  z.object({ how: z.literal('paper photographed'), photo: sha256 }),
  z.object({ how: z.literal('letter or e-mail'), words: passage, photo: z.optional(sha256) }),
  z.object({ how: z.literal('spoken'), words: passage, spokenAt: instant, witness: line }),
]);

export const agreementFacts = {
  /** The hours until dry that the washer expects, until a forecast takes their place. */
  /** By hand: where there is no room to forecast, or the owner knows better and says why. */
  DryingExpected: fact('DryingExpected', {
    hours: z.number().check(z.gt(0), z.lte(1000)),
    why: z.optional(passage),
  }),
  /** A bath somebody means to mix beyond what the plan proposes; recorded again under its id, it is changed. */
  BathPlanned: fact('BathPlanned', {
    bath: id,
    purpose: line,
    agents: z.array(z.enum(agents)).check(z.minLength(1), z.maxLength(8)),
    /** Computed or measured. */
    ph: z.optional(acidity),
  }),
  /** A bath nobody means to mix any more. */
  BathDropped: fact('BathDropped', { bath: id }),
  /** The plan as it stood when it was put to the client, whole: later rules must not change what was agreed. */
  PlanAgreed: fact('PlanAgreed', {
    rulebook: line,
    /** SHA-256 of the plan's canonical JSON. */
    fingerprint: sha256,
    method: line,
    /** The plan as the engine gave it. */
    plan: z.record(z.string(), z.unknown()),
    note: z.optional(passage),
  }),
  ConsentGiven: fact('ConsentGiven', {
    /** Fingerprint of the plan agreed to. */
    plan: sha256,
    /** SHA-256 of the consent paper that was shown. */
    paper: sha256,
    risks: z.array(passage),
    notToExceed: money,
    agreed: agreedBy,
  }),
  ConsentRefused: fact('ConsentRefused', {
    what: z.enum(['the plan', 'dye test', 'disclosure']),
    words: passage,
    /** Whether the client signed the refusal. */
    signed: z.boolean(),
  }),
  /** A corrective aim for colours that have run before, agreed with the client. */
  CorrectiveAimAgreed: fact('CorrectiveAimAgreed', { aim: passage }),
  ConsentWithdrawn: fact('ConsentWithdrawn', { words: passage }),
  /** The owner takes responsibility for one rule, or for a rug leaving short of the dry standard; printed. */
  OverrideGranted: fact('OverrideGranted', {
    rule: z.union([z.enum(ruleIds), z.literal('dry standard')]),
    /** The findings, colours or hours it is for; a later one under the same rule holds again. */
    about: z.array(passage),
    reason: passage,
  }),
  /** A sign-off some rule asks for: the owner's, or a conservator's by name. */
  SignedOff: fact('SignedOff', {
    as: z.enum(signatories),
    name: line,
    about: passage,
  }),
};
