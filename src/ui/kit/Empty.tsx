import type { ReactNode } from 'react';

/** An empty list says why it is empty and what would fill it. */
export function Empty({ children }: { readonly children: ReactNode }) {
  return (
    <div className="empty">
      <svg viewBox="0 0 96 26" aria-hidden="true">
        {Array.from({ length: 12 }, (_, index) => 4 + index * 8).map((x) => (
          <line key={x} x1={x} x2={x} y1={1} y2={25} />
        ))}
      </svg>
      <div>{children}</div>
    </div>
  );
}
