/** A paper as headings, lines, tables and figures: pure data, typeset by an adapter. */
export interface Paper {
  readonly title: string;
  /** Printed small at the head of each page. */
  readonly workshop: { readonly name: string; readonly lines: readonly string[] };
  readonly number: string;
  /** Day of issue, already in words. */
  readonly date: string;
  /** Who made it. */
  readonly person: string;
  readonly language: 'en';
  /** Last seal of the stream the paper was made from; printed at the foot of each page. */
  readonly seal: string;
  readonly parts: readonly PaperPart[];
}

export type PaperPart =
  | { readonly kind: 'heading'; readonly level: 1 | 2 | 3; readonly text: string }
  | { readonly kind: 'text'; readonly text: string; readonly tone?: 'plain' | 'soft' | 'caution' | 'stop' }
  | {
      readonly kind: 'facts';
      readonly rows: readonly { readonly name: string; readonly value: string; readonly why?: string }[];
    }
  | { readonly kind: 'list'; readonly items: readonly string[]; readonly ordered?: boolean }
  | {
      readonly kind: 'table';
      readonly caption?: string;
      readonly columns: readonly {
        readonly name: string;
        readonly align?: 'start' | 'end';
        readonly share?: number;
      }[];
      readonly rows: readonly (readonly string[])[];
    }
  | {
      readonly kind: 'picture';
      /** SHA-256 of a photograph, shown upright and without position data. */
      readonly photo: string;
      readonly caption: string;
      readonly marks?: readonly PaperMark[];
    }
  | {
      readonly kind: 'pictures';
      readonly across: 2 | 3;
      readonly pictures: readonly { readonly photo: string; readonly caption: string }[];
    }
  /** A drawing of our own as SVG text (condition map, plot, woven band, QR code). */
  | { readonly kind: 'drawing'; readonly svg: string; readonly caption: string; readonly widthMm: number }
  | {
      readonly kind: 'signature';
      readonly statement: string;
      readonly name: string;
      readonly at: string;
      /** Pen strokes, each a list of points in 0 … 1 of the pad's width and height; empty for a typed name. */
      readonly strokes: readonly (readonly (readonly [number, number])[])[];
    }
  | { readonly kind: 'page-break' };

/** A mark drawn over a picture: points in 0 … 1 of the picture's width and height. */
export interface PaperMark {
  readonly label: string;
  readonly shape: 'point' | 'line' | 'polygon';
  readonly points: readonly (readonly [number, number])[];
}
