import type { Problem } from '../units/index.ts';
import type { WordsFor } from './words.ts';

type None = Readonly<Record<never, never>>;

/** Refusals around signing in and what a role may do. */
export type AccessProblem =
  | Problem<'signed-out', None>
  | Problem<'sign-in-refused', None>
  | Problem<'sign-in-locked', { readonly opensAt: string; readonly minutes: number }>
  | Problem<'passphrase-needed', None>
  | Problem<'role-needed', { readonly roles: readonly string[] }>
  | Problem<'set-up-done', None>
  | Problem<'set-up-first', None>
  | Problem<'set-up-code-wrong', None>
  | Problem<'name-in-use', { readonly name: string }>
  | Problem<'passphrase-too-short', { readonly length: number; readonly least: number }>
  | Problem<'pin-too-simple', { readonly least: number; readonly most: number }>
  | Problem<'person-unknown', { readonly person: string }>
  | Problem<'last-owner', { readonly name: string }>;

const nothingChanged = 'Nothing was changed, and what you typed is still here.';

export const accessWords = {
  'signed-out': () => ({
    happened: 'You are not signed in, or the session has ended.',
    matters: 'Every entry names who made it, so nothing can be read or recorded without that.',
    now: 'Sign in again; what you typed is kept and can be recorded then.',
  }),
  'sign-in-refused': () => ({
    happened: 'The name and the passphrase or PIN do not belong together.',
    matters: 'Nobody was signed in.',
    now: 'Check the spelling and try once more. After five wrong tries in a row this name is closed for a while.',
  }),
  'sign-in-locked': ({ opensAt, minutes }) => ({
    happened: `There were too many wrong tries for this name, so it is closed for now.`,
    matters: 'This keeps anybody from guessing a passphrase or PIN by trying many.',
    now: `It opens again ${minutes <= 1 ? 'within a minute' : `in about ${minutes} minutes`} (${opensAt.slice(11, 16)} UTC). Other people can sign in meanwhile.`,
  }),
  'passphrase-needed': () => ({
    happened: 'This needs a session begun with a passphrase; the present one was switched to by PIN.',
    matters: 'A short PIN is enough to log work, not to change who may do what or to destroy data.',
    now: 'Sign out, sign in with your passphrase, and do it again.',
  }),
  'role-needed': ({ roles }) => ({
    happened: `This is for ${roles.join(' or ')} only.`,
    matters: nothingChanged,
    now: `Ask somebody with the role ${roles.join(' or ')} to do it, or have the owner change your roles.`,
  }),
  'set-up-done': () => ({
    happened: 'This workshop already has its owner.',
    matters: 'The code from the terminal works only for the first account.',
    now: 'Sign in, or ask the owner for an account.',
  }),
  'set-up-first': () => ({
    happened: 'This workshop has no owner yet.',
    matters: 'Until there is one, nobody can sign in.',
    now: 'Open the start page and give the code that the terminal shows.',
  }),
  'set-up-code-wrong': () => ({
    happened: 'The code is not the one the terminal shows.',
    matters: 'It proves that whoever makes the first account stands at the machine.',
    now: 'Read it again from the terminal in which Wefthouse was started. Each start without an owner prints a new one.',
  }),
  'name-in-use': ({ name }) => ({
    happened: `There is already a person called ${name}.`,
    matters: 'People sign in by name, so two cannot share one.',
    now: 'Add a second name or an initial.',
  }),
  'passphrase-too-short': ({ length, least }) => ({
    happened: `The passphrase has ${length} characters.`,
    matters: 'Short ones are guessed.',
    now: `Give at least ${least} characters: four or five words that nobody would expect together do well.`,
  }),
  'pin-too-simple': ({ least, most }) => ({
    happened: 'The PIN is too short, too long, not of digits, or too easy to guess.',
    matters: 'Whoever guesses it can record work in your name.',
    now: `Give ${least} to ${most} digits that are neither all the same nor a plain run such as 1234.`,
  }),
  'person-unknown': ({ person }) => ({
    happened: `Nobody here goes by ${person}.`,
    matters: 'Nothing was changed.',
    now: 'Check the spelling, or load the list of people again: they may have left.',
  }),
  'last-owner': ({ name }) => ({
    happened: `${name} is the only owner.`,
    matters: 'Without an owner nobody could grant an override, add people or change settings.',
    now: 'Make somebody else an owner first.',
  }),
} satisfies WordsFor<AccessProblem>;
