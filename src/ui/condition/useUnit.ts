import { type RefObject, useEffect, useState } from 'react';

interface Size {
  readonly width: number;
  readonly height: number;
}

/** How many units of a drawing one screen px is, kept current while the drawing grows and shrinks. */
export function useUnit(element: RefObject<Element | null>, shown: Size): number {
  const [size, setSize] = useState<Size>({ width: 360, height: 480 });
  useEffect(() => {
    const watched = element.current;
    if (watched === null) return;
    const observer = new ResizeObserver(([entry]) => {
      if (entry === undefined || entry.contentRect.width === 0) return;
      setSize({ width: entry.contentRect.width, height: entry.contentRect.height });
    });
    observer.observe(watched);
    return () => observer.disconnect();
  }, [element]);
  return Math.max(shown.width / size.width, shown.height / size.height);
}
