/** The value below which a share of the sorted measurements lies. */
export const quantile = (sorted: readonly number[], share: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;

/** Runs each piece of work once and says how long the middle one and the slowest hundredth took, in ms. */
export async function timed<Item>(
  items: Iterable<Item>,
  work: (item: Item) => unknown,
): Promise<{ readonly p50: number; readonly p99: number; readonly mean: number; readonly count: number }> {
  const times: number[] = [];
  for (const item of items) {
    const begun = performance.now();
    await work(item);
    times.push(performance.now() - begun);
  }
  times.sort((a, b) => a - b);
  const mean = times.reduce((sum, time) => sum + time, 0) / times.length;
  return { p50: quantile(times, 0.5), p99: quantile(times, 0.99), mean, count: times.length };
}

/** A line of the report, in milliseconds. */
export const line = (
  what: string,
  { p50, p99, count }: { readonly p50: number; readonly p99: number; readonly count: number },
): string => `${what.padEnd(58)} p50 ${ms(p50)}   p99 ${ms(p99)}   (${count})`;

const ms = (value: number): string => `${value.toFixed(2).padStart(8)} ms`;
