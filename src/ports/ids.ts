/** Names for new things. */
export interface Ids {
  /** A UUIDv7: unique, and in order of time. */
  next(): string;
}
