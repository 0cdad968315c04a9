/** Colours are written `#rrggbb`. */
export interface RugDesign {
  readonly seed: number;
  readonly widthMm: number;
  readonly lengthMm: number;
  readonly ground: string;
  readonly border: string;
  readonly accent: string;
  readonly second: string;
  readonly dark: string;
  readonly fringe: string | null;
  readonly field: 'medallion' | 'three medallions' | 'all-over' | 'stripes' | 'plain' | 'diamonds' | 'boteh';
  readonly borders: 1 | 2 | 3;
  /** Strength of the weaver's colour change from batch to batch, 0 … 1. */
  readonly abrash: number;
  readonly shape?: 'rectangle' | 'round';
  /** Rows and columns of the weave drawn over the picture [mm]; larger for coarse flatweaves. */
  readonly gaugeMm: number;
  /** Dust that lies over it at the door, 0 … 1, where a weave card is laid on its face to be compared later. */
  readonly dusty?: number;
  readonly troubles: readonly Trouble[];
}

/** Something that was there before; positions in 0 … 1 of width and length from the lower left. */
export interface Trouble {
  readonly kind:
    | 'stain'
    | 'wine'
    | 'urine'
    | 'hole'
    | 'tear'
    | 'low pile'
    | 'colour run'
    | 'moth'
    | 'tide line'
    | 'mould'
    | 'fade'
    | 'repair';
  readonly x: number;
  readonly y: number;
  /** Size in millimetres. */
  readonly sizeMm: number;
}
