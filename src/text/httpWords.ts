import type { Problem } from '../units/index.ts';
import type { WordsFor } from './words.ts';

type None = Readonly<Record<never, never>>;

/** A body that is not what was asked for: which field, what it was, and what is allowed. */
export type BodyWrongShape = Problem<
  'body-wrong-shape',
  { readonly field: string; readonly value: string; readonly allowed: string }
>;

/** Refusals of requests as such, before anything of the workshop is asked. */
export type RequestProblem =
  | BodyWrongShape
  | Problem<'body-not-json', { readonly reason: string }>
  | Problem<'body-wrong-type', { readonly given: string; readonly wanted: string }>
  | Problem<'body-too-large', { readonly most: number }>
  | Problem<'foreign-origin', { readonly origin: string }>
  | Problem<'nothing-here', { readonly path: string }>
  | Problem<'rug-unknown', { readonly rug: string }>
  | Problem<'client-unknown', { readonly client: string }>
  | Problem<'room-unknown', { readonly room: string }>
  | Problem<'consignment-unknown', { readonly consignment: string }>
  | Problem<'photograph-unknown', { readonly photo: string }>
  | Problem<'paper-unknown', { readonly paper: string; readonly known: readonly string[] }>
  | Problem<'tag-in-use', { readonly tag: string; readonly number: number; readonly title: string }>
  | Problem<'client-added-already', { readonly client: string }>
  | Problem<'signature-unknown', { readonly signature: string }>
  | Problem<'paper-not-kept', { readonly paper: string }>
  | Problem<'backup-not-possible', None>
  | Problem<'unexpected', None>;

/** Refusals when the server starts. */
export type StartProblem =
  | Problem<'address-in-use', { readonly address: string; readonly port: number }>
  | Problem<'address-not-here', { readonly address: string }>
  | Problem<'address-not-allowed', { readonly port: number }>
  | Problem<'certificate-unreadable', { readonly file: string; readonly reason: string }>
  | Problem<'screens-missing', { readonly folder: string }>
  | Problem<'store-missing', { readonly folder: string }>
  | Problem<'store-in-use', { readonly folder: string }>;

const nothingRecorded = 'Nothing was recorded.';

export const httpWords = {
  'body-wrong-shape': ({ field, value, allowed }) => ({
    happened: `${field} is ${value}.`,
    matters: `It cannot be taken as it stands. ${nothingRecorded}`,
    now: `Give ${field} as ${allowed}.`,
  }),
  'body-not-json': ({ reason }) => ({
    happened: `What was sent is not JSON: ${reason}`,
    matters: nothingRecorded,
    now: 'Send one JSON object with the content type application/json.',
  }),
  'body-wrong-type': ({ given, wanted }) => ({
    happened: `What was sent is marked as ${given === '' ? 'nothing in particular' : given}.`,
    matters: nothingRecorded,
    now: `Send it as ${wanted}.`,
  }),
  'body-too-large': ({ most }) => ({
    happened: `What was sent is larger than ${most} MB.`,
    matters: `At most ${most} MB are taken at once. ${nothingRecorded}`,
    now: 'Send less at once: shorten the text, or send pictures one by one as photographs.',
  }),
  'foreign-origin': ({ origin }) => ({
    happened: `The request came from ${origin === '' ? 'no page of this server' : origin}.`,
    matters: 'Pages of others must not record anything in your name.',
    now: 'Open Wefthouse by its own address and do it there. A program of your own sends the header Origin with the address of this server.',
  }),
  'nothing-here': ({ path }) => ({
    happened: `There is nothing at ${path}.`,
    matters: 'Nothing was read or changed.',
    now: 'Check the address, or start from the first page.',
  }),
  'rug-unknown': ({ rug }) => ({
    happened: `There is no dossier ${rug} here.`,
    matters: 'Nothing was read or changed.',
    now: 'Find the rug by its tag, number or client on the page Rugs.',
  }),
  'room-unknown': ({ room }) => ({
    happened: `There is no drying room ${room}.`,
    matters: 'Nothing can be shown or recorded there.',
    now: 'Open the drying rooms and choose one from the list.',
  }),
  'client-unknown': ({ client }) => ({
    happened: `There is no client ${client} here.`,
    matters: nothingRecorded,
    now: 'Find the client by name on the page Clients, or add them.',
  }),
  'consignment-unknown': ({ consignment }) => ({
    happened: `There is no consignment ${consignment} here.`,
    matters: 'Nothing was read or changed.',
    now: 'Open it from one of its rugs.',
  }),
  'photograph-unknown': ({ photo }) => ({
    happened: `The photograph ${photo.slice(0, 12)}… is not kept here.`,
    matters: 'An entry must not point at a picture that nobody can look at.',
    now: 'Send the photograph first, then record the entry that names it.',
  }),
  'paper-unknown': ({ paper, known }) => ({
    happened: `There is no paper called ${paper}.`,
    matters: 'Nothing was printed.',
    now: `Ask for one of: ${known.join(', ')}.`,
  }),
  'tag-in-use': ({ tag, number, title }) => ({
    happened: `Tag ${tag} hangs on another rug in the house: dossier ${number}, ${title}.`,
    matters: 'Two rugs with one tag get mixed up on the wash floor. Nothing was recorded.',
    now: 'Take another tag, or return the other rug first.',
  }),
  'client-added-already': ({ client }) => ({
    happened: `The client ${client} is already on record.`,
    matters: nothingRecorded,
    now: 'Load the client again and change what needs changing.',
  }),
  'signature-unknown': ({ signature }) => ({
    happened: `There is no signature ${signature} of this client.`,
    matters: 'An agreement must be bound to what was signed. Nothing was recorded.',
    now: 'Have the client sign once more.',
  }),
  'paper-not-kept': ({ paper }) => ({
    happened: `The paper ${paper.slice(0, 12)}… is not one that was shown here.`,
    matters:
      'A consent is bound to the very paper that was shown, so that nobody can deny it. Nothing was recorded.',
    now: 'Open the consent paper again, show it to the client, and record the consent then.',
  }),
  'backup-not-possible': () => ({
    happened: 'This store lives in memory only, so there is nothing to back up.',
    matters: 'Everything in it is gone when the program ends.',
    now: 'For real work start Wefthouse on a folder: npm start.',
  }),
  unexpected: () => ({
    happened: 'Something went wrong in the program itself.',
    matters: 'What was acknowledged before is safe; what you just sent may not be recorded.',
    now: 'Look whether it was recorded, then try again. If it happens again, show the terminal’s last lines to whoever looks after the machine.',
  }),
  'address-in-use': ({ address, port }) => ({
    happened: `Port ${port} of ${address} is in use by another program, perhaps by Wefthouse itself.`,
    matters: 'The server could not start.',
    now: `Stop the other one, or choose another port: --port ${port + 1}.`,
  }),
  'address-not-here': ({ address }) => ({
    happened: `This machine has no address ${address}.`,
    matters: 'The server could not start.',
    now: 'Give an address of this machine, or 0.0.0.0 for all of them.',
  }),
  'address-not-allowed': ({ port }) => ({
    happened: `This account may not use port ${port}.`,
    matters: 'The server could not start.',
    now: 'Choose a port from 1024 up, for example --port 8470.',
  }),
  'certificate-unreadable': ({ file, reason }) => ({
    happened: `The certificate or key in ${file} cannot be used: ${reason}`,
    matters: 'Without it tablets cannot reach the server safely, so it did not start.',
    now: 'Give --tls-cert and --tls-key as PEM files that belong together, or leave both out to use the workshop’s own authority.',
  }),
  'screens-missing': ({ folder }) => ({
    happened: `The screens are not in ${folder}.`,
    matters: 'The server would answer, but no tablet could show anything.',
    now: 'Start it by npm start or npx wefthouse serve from the checkout: they build what is missing.',
  }),
  'store-missing': ({ folder }) => ({
    happened: `There is no Wefthouse store in ${folder}.`,
    matters: 'A wrong folder would look like an empty and perfectly sound store.',
    now: 'Give the folder of the store: --data DIR. wefthouse serve makes a new one.',
  }),
  'store-in-use': ({ folder }) => ({
    happened: `Another Wefthouse server is working on ${folder}.`,
    matters: 'Two of them could give one dossier number or one tag to two rugs.',
    now: 'Use the running one, stop it first, or choose another folder: --data DIR.',
  }),
} satisfies WordsFor<RequestProblem | StartProblem>;
