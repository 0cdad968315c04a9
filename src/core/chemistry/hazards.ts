import table from '../../../data/chemistry/hazards.json' with { type: 'json' };

export const signalWords = ['Danger', 'Warning', 'none'] as const;
export type SignalWord = (typeof signalWords)[number];

/** Hazard statements a product may carry, by code. @source un-ghs, annex 3 (data/chemistry/hazards.json) */
export const hazardStatements: readonly { readonly code: string; readonly words: string }[] = table.rows;

/** A hazard statement in words; the code alone where it is not in the table. */
export const hazardWords = (code: string): string =>
  hazardStatements.find((row) => row.code === code)?.words ?? code;
