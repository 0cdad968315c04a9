/** How far a running check of the record is; the answer is null while none runs. */
export interface VerifyProgress {
  /** Seals are counted by entries, photographs by the dossiers they belong to. */
  readonly doing: 'seals' | 'photographs';
  readonly done: number;
  readonly of: number;
}
