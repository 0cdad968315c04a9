interface Flat {
  readonly x: number;
  readonly y: number;
}

/** To the nearest place between the two ends, so that a stroke that turns back keeps its turn. */
const distanceToChord = (point: Flat, from: Flat, to: Flat): number => {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const long2 = dx * dx + dy * dy;
  const along = long2 === 0 ? 0 : ((point.x - from.x) * dx + (point.y - from.y) * dy) / long2;
  const t = Math.min(1, Math.max(0, along));
  return Math.hypot(point.x - from.x - t * dx, point.y - from.y - t * dy);
};

/**
 * A drawn stroke with as few points as keep every dropped one within a tolerance of the line that is left.
 *
 * @param points - in order, any unit
 * @param tolerance - in the same unit, at least 0
 * @returns a part of the points, first and last among them
 * @source douglas-peucker-1973, with the distance to the piece of line instead of the whole line
 */
export function fewerPoints<Point extends Flat>(
  points: readonly Point[],
  tolerance: number,
): readonly Point[] {
  const first = points[0];
  const last = points.at(-1);
  if (first === undefined || last === undefined || points.length < 3) return points;
  let farthest = 0;
  let split = 0;
  points.forEach((point, index) => {
    const away = distanceToChord(point, first, last);
    if (index > 0 && index < points.length - 1 && away > farthest) {
      farthest = away;
      split = index;
    }
  });
  if (farthest <= tolerance) return [first, last];
  const left = fewerPoints(points.slice(0, split + 1), tolerance);
  const right = fewerPoints(points.slice(split), tolerance);
  return [...left.slice(0, -1), ...right];
}
