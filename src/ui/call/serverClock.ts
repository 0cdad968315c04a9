let aheadMs = 0;

/** Learns how far the server's clock is from this device's. A header counts whole seconds. */
export function learnServerTime(dateHeader: string | null): void {
  const told = dateHeader === null ? Number.NaN : Date.parse(dateHeader);
  if (Number.isNaN(told)) return;
  const difference = told + 500 - Date.now();
  aheadMs = Math.abs(difference) < 1500 ? 0 : difference;
}

/** Now by the server's clock [ms]. */
export const serverNow = (): number => Date.now() + aheadMs;
