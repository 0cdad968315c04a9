import { type RefObject, useEffect, useState } from 'react';

/** How wide an element stands on this screen [px], so that what is drawn in it is drawn at true size. */
export function useWidth(element: RefObject<Element | null>): number {
  const [width, setWidth] = useState(340);
  useEffect(() => {
    const watched = element.current;
    if (watched === null) return;
    const observer = new ResizeObserver(([entry]) => {
      if (entry !== undefined && entry.contentRect.width > 0) setWidth(entry.contentRect.width);
    });
    observer.observe(watched);
    return () => observer.disconnect();
  }, [element]);
  return width;
}
