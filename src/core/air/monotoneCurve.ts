/**
 * A smooth curve through points that never overshoots between them (piecewise cubic Hermite with
 * limited slopes), held flat outside the first and last point.
 *
 * @param points - [x, y] pairs in rising x, at least two
 * @returns y at x, in the unit of the points
 * @source fritsch-carlson-1980, sections 3 and 4
 * @accuracy passes through each point; monotone wherever the points are
 */
export function monotoneCurve(points: readonly (readonly [number, number])[]): (x: number) => number {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  const at = (values: readonly number[], index: number) => values[index] ?? Number.NaN;
  const secants = xs.slice(1).map((x, i) => (at(ys, i + 1) - at(ys, i)) / (x - at(xs, i)));
  const slopes = xs.map((_, i) => {
    if (i === 0) return at(secants, 0);
    if (i === xs.length - 1) return at(secants, secants.length - 1);
    const [before, after] = [at(secants, i - 1), at(secants, i)];
    // The harmonic mean of the neighbours keeps the slope inside the region of monotonicity.
    return before * after <= 0 ? 0 : (2 * before * after) / (before + after);
  });
  secants.forEach((secant, i) => {
    for (const end of [i, i + 1]) {
      if (secant === 0) slopes[end] = 0;
      else if (at(slopes, end) / secant > 3) slopes[end] = 3 * secant;
    }
  });
  return (x) => {
    const last = xs.length - 1;
    if (x <= at(xs, 0)) return at(ys, 0);
    if (x >= at(xs, last)) return at(ys, last);
    const i = xs.findIndex((right) => right > x) - 1;
    const width = at(xs, i + 1) - at(xs, i);
    const t = (x - at(xs, i)) / width;
    const [t2, t3] = [t * t, t * t * t];
    return (
      at(ys, i) * (2 * t3 - 3 * t2 + 1) +
      width * at(slopes, i) * (t3 - 2 * t2 + t) +
      at(ys, i + 1) * (3 * t2 - 2 * t3) +
      width * at(slopes, i + 1) * (t3 - t2)
    );
  };
}
