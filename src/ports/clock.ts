/** The time, as the shell tells it. */
export interface Clock {
  /** Now, as `2026-11-25T09:00:00.000Z`. */
  now(): string;
}
