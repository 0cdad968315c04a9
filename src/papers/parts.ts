import type {
  PaperFacts,
  PaperHeading,
  PaperList,
  PaperNotice,
  PaperPart,
  PaperRow,
  PaperTable,
  PaperText,
} from './paper.ts';

export const heading = (level: 1 | 2 | 3, text: string): PaperHeading => ({ kind: 'heading', level, text });

export const text = (written: string, tone: PaperText['tone'] = 'plain'): PaperText => ({
  kind: 'text',
  text: written,
  tone,
});

export const list = (items: readonly string[], ordered = false): PaperList => ({
  kind: 'list',
  items,
  ordered,
});

export const notice = (
  tone: PaperNotice['tone'],
  title: string,
  lines: readonly string[] = [],
): PaperNotice => ({
  kind: 'notice',
  tone,
  title,
  lines,
});

export type FactRow = PaperFacts['rows'][number];

/** A name with its value; what nobody recorded is said to be so, never left blank. */
export const row = (name: string, value: string | null | undefined, why?: string): FactRow => {
  const said = value === null || value === undefined || value === '' ? 'not recorded' : value;
  return why === undefined || why === '' ? { name, value: said } : { name, value: said, why };
};

export const facts = (...rows: readonly (FactRow | null)[]): PaperFacts => ({
  kind: 'facts',
  rows: rows.filter((one) => one !== null),
});

type Column = PaperTable['columns'][number];

/** A column for words, its width a part against the others'. */
export const words = (name: string, share = 1): Column => ({ name, align: 'start', share });
/** A column for figures, set to the end so that they compare. */
export const figures = (name: string, share = 1): Column => ({ name, align: 'end', share });

/** Longer than this a cell's words are set over the whole width, under their row. */
const longestCell = 220;

const spread = (columns: readonly Column[], cells: readonly string[]): readonly PaperRow[] => {
  const long = cells.flatMap((cell, at) =>
    cell.length > longestCell ? [{ wide: `${columns[at]?.name ?? ''}: ${cell}` }] : [],
  );
  return [cells.map((cell) => (cell.length > longestCell ? 'stands below' : cell)), ...long];
};

/** A table, or a line saying that there is nothing to list. */
export const table = (
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  nothing: string,
  caption?: string,
): PaperPart => {
  if (rows.length === 0) return text(nothing, 'soft');
  const set = { kind: 'table' as const, columns, rows: rows.flatMap((cells) => spread(columns, cells)) };
  return caption === undefined ? set : { ...set, caption };
};

/** Words of somebody's own inside a line of ours: what runs from the right in them stays among them. */
export const isolated = (words: string): string =>
  /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufeff]/.test(words) ? `\u2068${words}\u2069` : words;
