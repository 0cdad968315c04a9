import type { PaperMark, PaperPoint } from './paper.ts';

/** A mark with the place of its number, all in millimetres of the printed picture. */
export interface PlacedMark {
  readonly label: string;
  readonly shape: PaperMark['shape'];
  readonly pointsMm: readonly PaperPoint[];
  readonly labelMm: PaperPoint;
  /** Where a line leads from the number to its mark, when the number had to stand apart. */
  readonly leadsToMm: PaperPoint | null;
}

/** Radius of the disc a number stands in, with a breath around it. */
const discMm = 2.4;
const directions = [-45, -135, 45, 135, -90, 0, 180, 90].map((degrees) => (degrees * Math.PI) / 180);
const ringsMm = [4.6, 7, 10, 14, 19, 25];

const apart = ([ax, ay]: PaperPoint, [bx, by]: PaperPoint): number => Math.hypot(ax - bx, ay - by);
const middle = (points: readonly PaperPoint[]): PaperPoint => points[Math.floor(points.length / 2)] ?? [0, 0];
const topmost = (points: readonly PaperPoint[]): PaperPoint =>
  points.reduce((best, point) => (point[1] < best[1] ? point : best), points[0] ?? [0, 0]);
const anchorOf = (shape: PaperMark['shape'], points: readonly PaperPoint[]): PaperPoint =>
  shape === 'polygon' ? topmost(points) : middle(points);

/**
 * Finds each mark's number a place beside it where it hides neither another number nor a point mark.
 * With no free place left on a crowded picture the number takes the last ring tried.
 */
export function placeLabels(
  marks: readonly PaperMark[],
  widthMm: number,
  heightMm: number,
): readonly PlacedMark[] {
  const inMm = marks.map((mark) =>
    mark.points.map(([across, down]): PaperPoint => [across * widthMm, down * heightMm]),
  );
  const pointMarks = marks.flatMap((mark, at) => (mark.shape === 'point' ? (inMm[at] ?? []) : []));
  const taken: PaperPoint[] = [];
  return marks.map((mark, at) => {
    const pointsMm = inMm[at] ?? [];
    const anchor = anchorOf(mark.shape, pointsMm);
    const places = ringsMm.flatMap((ring) =>
      directions.map(
        (angle): PaperPoint => [anchor[0] + ring * Math.cos(angle), anchor[1] + ring * Math.sin(angle)],
      ),
    );
    const inside = places.filter(
      ([x, y]) => x >= discMm && y >= discMm && x <= widthMm - discMm && y <= heightMm - discMm,
    );
    const free = inside.find(
      (place) =>
        taken.every((other) => apart(place, other) >= 2 * discMm) &&
        pointMarks.every((point) => apart(place, point) >= discMm + 2),
    );
    const labelMm = free ?? inside.at(-1) ?? anchor;
    taken.push(labelMm);
    const leadsToMm = apart(labelMm, anchor) > 6 ? anchor : null;
    return { label: mark.label, shape: mark.shape, pointsMm, labelMm, leadsToMm };
  });
}
