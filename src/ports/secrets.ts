/** Hashes what people know, and makes what nobody can guess. */
export interface Secrets {
  hash(secret: string): Promise<string>;
  /** Whether the secret is the hashed one; takes as long when there is no hash, so that time tells nothing. */
  matches(secret: string, hash: string | null): Promise<boolean>;
  /** A token of 32 random bytes, as base64url. */
  token(): string;
  /** SHA-256 of a token, hex. */
  digest(token: string): string;
  /** A code that is easy to read out and type, of 40 random bits. */
  spokenCode(): string;
}
