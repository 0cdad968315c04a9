/** The part of a surface that is shown, in its px; its height follows from the surface's own form. */
export interface View {
  readonly x: number;
  readonly y: number;
  readonly width: number;
}

export interface Extent {
  readonly widthPx: number;
  readonly heightPx: number;
}

export const wholeView = ({ widthPx }: Extent): View => ({ x: 0, y: 0, width: widthPx });

const mostZoom = 12;
const clamp = (value: number, least: number, most: number) => Math.min(Math.max(value, least), most);

/** The nearest view that lies on the surface. */
export function heldOn(view: View, { widthPx, heightPx }: Extent): View {
  const width = clamp(view.width, widthPx / mostZoom, widthPx);
  const height = (width * heightPx) / widthPx;
  return { width, x: clamp(view.x, 0, widthPx - width), y: clamp(view.y, 0, heightPx - height) };
}

/** Enlarges by a factor around a place of the surface, which stays where it is on the screen. */
export function zoomed(view: View, by: number, about: { x: number; y: number }, surface: Extent): View {
  const width = clamp(view.width / by, surface.widthPx / mostZoom, surface.widthPx);
  const share = width / view.width;
  return heldOn(
    { width, x: about.x - (about.x - view.x) * share, y: about.y - (about.y - view.y) * share },
    surface,
  );
}

export const middleOf = (view: View, { widthPx, heightPx }: Extent) => ({
  x: view.x + view.width / 2,
  y: view.y + (view.width * heightPx) / widthPx / 2,
});

/** Two fingers on the screen [px], where they were and where they are. */
export interface Pinch {
  readonly before: { readonly clientX: number; readonly clientY: number };
  readonly now: { readonly clientX: number; readonly clientY: number };
  /** The finger that lies still meanwhile. */
  readonly other: { readonly clientX: number; readonly clientY: number };
}

/**
 * Grows with the distance of two fingers and goes where their middle goes.
 *
 * @param about - the middle of the fingers, as a place of the surface
 * @param unit - surface px to a screen px
 */
export function pinched(
  view: View,
  { before, now, other }: Pinch,
  about: { x: number; y: number },
  unit: number,
  surface: Extent,
): View {
  const apart = (finger: Pinch['now']) =>
    Math.hypot(finger.clientX - other.clientX, finger.clientY - other.clientY);
  const grown = zoomed(view, apart(now) / Math.max(1, apart(before)), about, surface);
  return heldOn(
    {
      ...grown,
      x: grown.x - ((now.clientX - before.clientX) / 2) * unit,
      y: grown.y - ((now.clientY - before.clientY) / 2) * unit,
    },
    surface,
  );
}
