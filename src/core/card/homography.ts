/** Plane to picture: nine numbers, row by row, the last 1. */
export type Homography = readonly number[];

/**
 * Where a point of the plane falls.
 *
 * @source none: definition of a homography
 */
export function project(h: Homography, x: number, y: number): readonly [number, number] {
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, i = 0, j = 1] = h;
  const w = g * x + i * y + j;
  return [(a * x + b * y + c) / w, (d * x + e * y + f) / w];
}

/**
 * Which point of the plane falls on a point of the picture.
 *
 * @source none: definition of a homography, solved for the plane's point
 */
export function unproject(h: Homography, x: number, y: number): readonly [number, number] {
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, i = 0, j = 1] = h;
  // The two equations of `project`, solved for the plane's point.
  const [m11, m12, r1] = [a - x * g, b - x * i, x * j - c];
  const [m21, m22, r2] = [d - y * g, e - y * i, y * j - f];
  const determinant = m11 * m22 - m12 * m21;
  return [(r1 * m22 - m12 * r2) / determinant, (m11 * r2 - m21 * r1) / determinant];
}

/** How a step in the plane moves the picture's point: ∂x/∂X, ∂x/∂Y, ∂y/∂X, ∂y/∂Y. */
export function stretchAt(h: Homography, x: number, y: number): readonly [number, number, number, number] {
  const [a = 0, b = 0, , d = 0, e = 0, , g = 0, i = 0, j = 1] = h;
  const w = g * x + i * y + j;
  const [px, py] = project(h, x, y);
  return [(a - g * px) / w, (b - i * px) / w, (d - g * py) / w, (e - i * py) / w];
}

/**
 * Solves A x = b by elimination with pivoting.
 *
 * @param rows - A row by row, square
 * @returns null where A is singular
 * @source none: textbook elimination
 */
export function solve(rows: readonly (readonly number[])[], right: readonly number[]): number[] | null {
  const n = right.length;
  const m = rows.map((row, index) => [...row, right[index] ?? 0]);
  for (let column = 0; column < n; column += 1) {
    let pivot = column;
    for (let row = column + 1; row < n; row += 1)
      if (Math.abs(m[row]?.[column] ?? 0) > Math.abs(m[pivot]?.[column] ?? 0)) pivot = row;
    const top = m[pivot];
    const here = m[column];
    if (top === undefined || here === undefined || Math.abs(top[column] ?? 0) < 1e-14) return null;
    m[pivot] = here;
    m[column] = top;
    for (let row = 0; row < n; row += 1) {
      const line = m[row];
      if (row === column || line === undefined) continue;
      const times = (line[column] ?? 0) / (top[column] ?? 1);
      for (let at = column; at <= n; at += 1) line[at] = (line[at] ?? 0) - times * (top[at] ?? 0);
    }
  }
  return m.map((row, index) => (row[n] ?? 0) / (row[index] ?? 1));
}

export interface PointPair {
  readonly plane: readonly [number, number];
  readonly picture: readonly [number, number];
}

/**
 * The homography nearest to pairs of points, by linear least squares on the last number being 1.
 *
 * @param pairs - four or more
 * @returns null where the points do not fix a plane
 * @source none: direct linear transformation
 */
export function homographyOf(pairs: readonly PointPair[]): Homography | null {
  const spread = Math.max(...pairs.map(({ picture: [x, y] }) => Math.hypot(x, y)), 1);
  const normal = Array.from({ length: 8 }, () => new Array<number>(8).fill(0));
  const right = new Array<number>(8).fill(0);
  const add = (row: readonly number[], value: number): void => {
    for (let i = 0; i < 8; i += 1) {
      right[i] = (right[i] ?? 0) + (row[i] ?? 0) * value;
      const line = normal[i];
      if (line !== undefined)
        for (let j = 0; j < 8; j += 1) line[j] = (line[j] ?? 0) + (row[i] ?? 0) * (row[j] ?? 0);
    }
  };
  for (const { plane, picture } of pairs) {
    const [x, y] = [plane[0] / 100, plane[1] / 100];
    const [u, v] = [picture[0] / spread, picture[1] / spread];
    add([x, y, 1, 0, 0, 0, -u * x, -u * y], u);
    add([0, 0, 0, x, y, 1, -v * x, -v * y], v);
  }
  const found = solve(normal, right);
  if (found === null) return null;
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = found;
  return [
    (a * spread) / 100,
    (b * spread) / 100,
    c * spread,
    (d * spread) / 100,
    (e * spread) / 100,
    f * spread,
    g / 100,
    h / 100,
    1,
  ];
}
