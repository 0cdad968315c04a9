import * as z from 'zod/mini';
import { id, line } from '../dossier/facts/shape.ts';
import { type Role, roles, type WorkshopSettings, workshopFacts } from '../dossier/workshopFacts.ts';

const secret = z.string().check(z.minLength(1), z.maxLength(200));
const heldRoles = z.array(z.enum(roles)).check(z.minLength(1));

export const firstOwnerRequest = z.strictObject({
  code: line,
  name: line,
  passphrase: secret,
  workshopName: line,
});
export type FirstOwnerRequest = z.infer<typeof firstOwnerRequest>;

export const signInRequest = z.strictObject({ name: line, passphrase: secret });
export type SignInRequest = z.infer<typeof signInRequest>;

export const switchRequest = z.strictObject({ person: id, pin: secret });
export type SwitchRequest = z.infer<typeof switchRequest>;

/** A colleague who lends a hand with a step, proven by PIN; `id` is the entry's. */
export const handRequest = z.strictObject({ id, step: id, person: id, pin: secret });
export type HandRequest = z.infer<typeof handRequest>;

export const personRequest = z.strictObject({
  person: id,
  name: line,
  roles: heldRoles,
  passphrase: secret,
  pin: z.optional(secret),
});
export type PersonRequest = z.infer<typeof personRequest>;

export const personChange = z.strictObject({ name: line, roles: heldRoles, left: z.optional(z.boolean()) });
export type PersonChange = z.infer<typeof personChange>;

/** A new passphrase, a new PIN, or both; a PIN of null takes it away. */
export const secretChange = z.strictObject({
  passphrase: z.optional(secret),
  pin: z.optional(z.nullable(secret)),
});
export type SecretChange = z.infer<typeof secretChange>;

const { settings, why } = workshopFacts.SettingsChanged.shape;
export const settingsRequest = z.strictObject({ settings, why });
export type SettingsRequest = z.infer<typeof settingsRequest>;

/** Somebody who works here, as screens know them. */
export interface Colleague {
  readonly person: string;
  readonly name: string;
  readonly roles: readonly Role[];
  readonly hasPin: boolean;
  readonly left: boolean;
}

/** Answer of `GET /api/state`. */
export interface StateAnswer {
  readonly setUp: boolean;
  readonly signedIn: {
    readonly person: string;
    readonly name: string;
    readonly roles: readonly Role[];
  } | null;
  /** True when the session was switched to by PIN: enough for work, not for people and settings. */
  readonly byPin: boolean;
  /** Only when signed in. */
  readonly people?: readonly Colleague[];
  readonly settings: WorkshopSettings;
}
