/** The whole store as one archive, consistent although work goes on. */
export interface Backup {
  make(): Promise<AsyncIterable<Uint8Array>>;
}
