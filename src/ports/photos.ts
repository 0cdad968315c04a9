import type { PhotoProblem } from '../dossier/photoProblem.ts';
import type { RecordUnavailable } from '../dossier/recordProblem.ts';
import type { Result } from '../units/index.ts';

export interface Photo {
  /** SHA-256 (hex) of the original bytes; its name for ever. */
  readonly photo: string;
  readonly mediaType: 'image/jpeg' | 'image/png' | 'image/webp' | 'image/heic';
  /** Size in pixels after the orientation flag is honoured. */
  readonly widthPx: number;
  readonly heightPx: number;
  readonly bytes: number;
}

/** `shown` is upright, without position or maker's data, at most 2400 px; `thumbnail` at most 480 px. */
export type PhotoForm = 'original' | 'shown' | 'thumbnail';

/** Photographs by the hash of their bytes. Originals are never altered. */
export interface Photos {
  /** Keeps a photograph durably, or says why it is none. The same bytes twice are one photograph. */
  keep(bytes: Uint8Array, claimedType: string): Promise<Result<Photo, PhotoProblem | RecordUnavailable>>;
  /** The bytes of one form, or null when there is no such photograph. */
  read(
    photo: string,
    form: PhotoForm,
  ): Promise<{ readonly bytes: Uint8Array; readonly mediaType: string } | null>;
  describe(photo: string): Promise<Photo | null>;
}

/** The whole store, for looking after it. */
export interface PhotoArchive extends Photos {
  /** Reads every original and names those whose bytes are no longer what their name says. */
  verify(): Promise<{ readonly photos: number; readonly broken: readonly string[] }>;
}
