import table from '../../../data/weave/medianInterval.json' with { type: 'json' };

/** A median of normal values scatters by so much more than their mean: √(π/2). */
const medianToMean = Math.sqrt(Math.PI / 2);

/**
 * Half of the 95 % interval of the median of a few counts, as a share of it.
 *
 * @param values - 3 to 9 counts of one kind
 * @returns null for fewer or more: two places say nothing of how a rug varies
 * @source nist-sematech, 1.3.6.7.2 (data/weave/medianInterval.json); the median's standard error is that of normal values
 */
export function medianHalf(values: readonly number[]): number | null {
  const row = table.rows.find(({ freedom }) => freedom === values.length - 1);
  if (row === undefined) return null;
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const deviation = Math.sqrt(squares / row.freedom);
  return (row.t * medianToMean * deviation) / Math.sqrt(values.length) / mean;
}
