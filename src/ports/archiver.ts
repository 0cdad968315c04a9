/** One file of an archive; its content is asked for when the archive has come to it. */
export interface ArchiveFile {
  readonly name: string;
  /** Instant the file is dated with. */
  readonly at: string;
  /** False for what is compressed already, such as photographs. */
  readonly press: boolean;
  readonly open: () => Promise<Uint8Array | AsyncIterable<Uint8Array>>;
}

/** Packs files into one, piece by piece, so that nothing is held whole. */
export interface Archiver {
  zip(files: readonly ArchiveFile[]): AsyncIterable<Uint8Array>;
}
