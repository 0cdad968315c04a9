/** A paper as headings, lines, tables and figures: pure data, typeset by an adapter. */
export interface Paper {
  readonly title: string;
  /** What a reader should know before reading: printed under the title. */
  readonly subtitle?: string;
  readonly size: PaperSize;
  /** Printed at the head of the first page; the name alone on later ones. */
  readonly workshop: { readonly name: string; readonly lines: readonly string[] };
  readonly number: string;
  /** Which rug or consignment, as a person would point at it: `Dossier 0217 · tag 41 · runner`. */
  readonly rug: string;
  /** Day of issue, already in words. */
  readonly date: string;
  /** The same as an instant, `2026-11-25T09:00:00.000Z`, for the file's own record of when it was made. */
  readonly issuedAt: string;
  /** Who made it. */
  readonly person: string;
  readonly language: 'en';
  /** Last seal of the stream the paper was made from; printed at the foot of each page. */
  readonly seal: string;
  readonly parts: readonly PaperPart[];
}

export type PaperSize = 'a4' | 'letter';

export type PaperPart =
  | PaperHeading
  | PaperText
  | PaperNotice
  | PaperFacts
  | PaperList
  | PaperTable
  | PaperPicture
  | PaperPictures
  | PaperDrawing
  | PaperSignature
  /** A list of the paper's own first-level headings with their pages. */
  | { readonly kind: 'contents' }
  | { readonly kind: 'page-break' };

export interface PaperHeading {
  readonly kind: 'heading';
  readonly level: 1 | 2 | 3;
  readonly text: string;
}

/** Running text; a line break starts a new paragraph. */
export interface PaperText {
  readonly kind: 'text';
  readonly text: string;
  readonly tone?: 'plain' | 'soft' | 'lead';
}

/** A box that must not be read over. The tone is told by a word and a shape, the hue only adds to it. */
export interface PaperNotice {
  readonly kind: 'notice';
  readonly tone: 'caution' | 'stop' | 'held' | 'note';
  readonly title: string;
  readonly lines: readonly string[];
}

/** Names with values; `why` is the reason or source, printed under the value. */
export interface PaperFacts {
  readonly kind: 'facts';
  readonly rows: readonly { readonly name: string; readonly value: string; readonly why?: string }[];
}

export interface PaperList {
  readonly kind: 'list';
  readonly items: readonly string[];
  readonly ordered?: boolean;
}

/** A table whose head is repeated on every page it reaches. */
export interface PaperTable {
  readonly kind: 'table';
  readonly caption?: string;
  readonly columns: readonly {
    readonly name: string;
    readonly align?: 'start' | 'end';
    /** Part of the width, against the other columns' parts; 1 where not given. */
    readonly share?: number;
  }[];
  readonly rows: readonly PaperRow[];
}

/** Cells, one for each column; or a passage that runs over the whole width under the row before it. */
export type PaperRow = readonly string[] | { readonly wide: string };

export interface PaperPicture {
  readonly kind: 'picture';
  /** SHA-256 of a photograph, shown upright and without position data. */
  readonly photo: string;
  readonly caption: string;
  readonly marks?: readonly PaperMark[];
}

export interface PaperPictures {
  readonly kind: 'pictures';
  readonly across: 2 | 3;
  readonly pictures: readonly Omit<PaperPicture, 'kind'>[];
}

/** A drawing of our own as SVG text (condition map, plot, woven band, QR code). */
export interface PaperDrawing {
  readonly kind: 'drawing';
  readonly svg: string;
  /** Printed under the drawing. */
  readonly caption: string;
  /** What the drawing tells, for a reader who cannot see it. */
  readonly described: string;
  readonly widthMm: number;
}

export interface PaperSignature {
  readonly kind: 'signature';
  readonly statement: string;
  readonly name: string;
  readonly at: string;
  /** Pen strokes, each a list of points in 0 … 1 of the pad's width and height; empty for a typed name. */
  readonly strokes: readonly (readonly PaperPoint[])[];
}

export type PaperPoint = readonly [across: number, down: number];

/** A mark drawn over a picture: points in 0 … 1 of the picture's width and height. */
export interface PaperMark {
  readonly label: string;
  readonly shape: 'point' | 'line' | 'polygon';
  readonly points: readonly PaperPoint[];
}
