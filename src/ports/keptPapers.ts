/** Papers that were shown to a client, kept as the bytes that were shown, until the client is erased. */
export interface KeptPapers {
  /** Keeps a paper durably; answers its SHA-256 (hex). The same bytes twice are one paper. */
  keep(client: string, bytes: Uint8Array): Promise<string>;
  read(client: string, sha256: string): Promise<Uint8Array | null>;
  /** Removes every paper of a client. */
  erase(client: string): Promise<void>;
}
