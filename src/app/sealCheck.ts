/** Goes into every exported dossier: whoever gets it can check the seals with Node alone, without this product. */
export const sealCheckScript = `// Checks the seals of entries.json:  node check.mjs
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';

const sha256 = (data) => createHash('sha256').update(data).digest('hex');
const canonical = (value) =>
  Array.isArray(value)
    ? '[' + value.map(canonical).join(',') + ']'
    : value !== null && typeof value === 'object'
      ? '{' + Object.keys(value).sort().map((key) => JSON.stringify(key) + ':' + canonical(value[key])).join(',') + '}'
      : JSON.stringify(value);

const { entries, photographs, papers, unsound } = JSON.parse(readFileSync(new URL('entries.json', import.meta.url), 'utf8'));
const faults = [];
let before = '';
for (const [index, { seal, ...entry }] of entries.entries()) {
  if (entry.revision !== index + 1) faults.push('entry ' + (index + 1) + ' is missing');
  if (sha256(canonical({ ...entry, before })) !== seal) faults.push('entry ' + entry.revision + ' was altered');
  before = seal;
}
for (const { file, sha256: named } of [...photographs, ...papers])
  if (sha256(readFileSync(new URL(file, import.meta.url))) !== named) faults.push(file + ' was altered');
for (const file of unsound) faults.push(file + ' could not be read as it was shown, and is left out');
console.log(faults.length === 0 ? entries.length + ' entries and their files are as they were sealed; last seal ' + before : faults.join('\\n'));
process.exitCode = faults.length === 0 ? 0 : 1;
`;

/** What an exported dossier says about itself. */
export const exportReadMe = (title: string, seal: string, unsound: readonly string[]): string => `${title}

entries.json   every entry of this dossier, oldest first, with its seal
photographs/   the photographs the entries name, unaltered, each under the SHA-256 of its bytes
shown/         papers as they were shown to the client before consent, each under its SHA-256
${unsound.map((file) => `               LEFT OUT: ${file}; what is kept of it was altered or cannot be read\n`).join('')}papers/        papers made from the entries on export
check.mjs      checks the seals and the files: node check.mjs (any Node from 18)

A seal is the SHA-256 (hex) of the canonical JSON (RFC 8785: keys in order, no white space, UTF-8) of the
entry without its seal and with the seal of the entry before it as "before" (empty for the first). Who
alters, removes or inserts an entry breaks its seal and every later one. Cutting off the end leaves sound
seals, so compare the last one with what a paper of this dossier prints at its foot:

${seal}
`;
