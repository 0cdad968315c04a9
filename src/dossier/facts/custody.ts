import * as z from 'zod/mini';
import { day, fact, id, line, massG, money, passage, sha256 } from './shape.ts';

/** Where the rug is, who has it, and what happened that nobody planned. */
export const custodyFacts = {
  RugMoved: fact('RugMoved', { place: line }),
  SentOut: fact('SentOut', { to: line, purpose: line, backBy: z.optional(day) }),
  CameBack: fact('CameBack', { condition: passage }),
  Quarantined: fact('Quarantined', {
    why: z.enum(['moth or beetle', 'mould', 'contaminated water', 'insecticide', 'other']),
    note: z.optional(passage),
  }),
  QuarantineReleased: fact('QuarantineReleased', {
    treatment: passage,
    inspected: passage,
  }),
  IncidentReported: fact('IncidentReported', {
    what: passage,
    cause: z.optional(passage),
    action: passage,
    clientTold: z.boolean(),
    photos: z.array(sha256),
  }),
  /** The client has been told of an incident reported earlier, by whom is the entry's own. */
  IncidentTold: fact('IncidentTold', { incident: id, how: line }),
  StorageDue: fact('StorageDue', { from: day, charge: z.optional(money) }),
  Unclaimed: fact('Unclaimed', { since: day, note: z.optional(passage) }),
  RugDusted: fact('RugDusted', {
    pass: z.int().check(z.gte(1), z.lte(50)),
    soilG: massG,
    minutes: z.optional(z.number().check(z.gte(0), z.lte(600))),
    side: z.enum(['face', 'back']),
  }),
  NoteAdded: fact('NoteAdded', { note: passage }),
  /** Takes an earlier entry out of account; both stay in the history. */
  EntryWithdrawn: fact('EntryWithdrawn', { entry: id, reason: passage }),
};
