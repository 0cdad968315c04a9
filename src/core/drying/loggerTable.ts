/** What stands between the values of a row. */
export const separators = [',', ';', '\t'] as const;
export type Separator = (typeof separators)[number];

/**
 * Lines of a table in text, cut into cells; cells in quotes may hold the separator.
 *
 * @param text - the file's text
 * @param separator - between cells
 * @returns cells by line; empty lines keep their place, so that a row's number is its line
 * @source none: comma-separated values as in RFC 4180, without line breaks inside quotes
 */
export const cellsOf = (text: string, separator: Separator): readonly (readonly string[])[] =>
  text
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\n|\r/)
    .map((line) => {
      if (!line.includes('"')) return line.split(separator).map((cell) => cell.trim());
      const cells: string[] = [''];
      let inQuotes = false;
      for (const sign of line) {
        if (sign === '"') inQuotes = !inQuotes;
        else if (sign === separator && !inQuotes) cells.push('');
        else cells[cells.length - 1] += sign;
      }
      return cells.map((cell) => cell.trim());
    });

/** A written number, a unit after it allowed; null where it is none. */
export function writtenNumber(text: string, decimal: '.' | ','): number | null {
  const plain = text.trim().replace(/\s*(?:°\s*[CF]|[CF]|%(?:\s*RH)?|% ?rF)$/i, '');
  const pointed = decimal === ',' ? plain.replace(',', '.') : plain;
  return /^[+-]?\d+(\.\d+)?$/.test(pointed) ? Number(pointed) : null;
}
