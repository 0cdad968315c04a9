/**
 * The words by which a text is found: lower-cased, accents taken off, split at everything that is neither
 * letter nor digit. The same for what is kept and for what is typed, so that the two meet.
 *
 * @param texts - any texts
 * @returns the words, each once, in order of first occurrence
 * @source none: rule of this project
 * @example searchWords('Çelebi, No. 12') // ['celebi', 'no', '12']
 */
export function searchWords(...texts: readonly string[]): readonly string[] {
  // Normalised before as well: letters of mathematics, say, only then have a small form.
  const small = texts.join(' ').normalize('NFKD').toLowerCase().normalize('NFKD');
  const plain = small.replace(/\p{M}/gu, '');
  return [...new Set(plain.match(/[\p{L}\p{N}]+/gu))];
}
