import type { ReactNode } from 'react';
import { Section } from '../kit/index.ts';

/** A section of the dossier that a next step can lead to. */
export function Part({
  id,
  ...section
}: {
  readonly id: string;
  readonly title: string;
  readonly aside?: ReactNode;
  readonly children: ReactNode;
}) {
  return (
    <div id={id} className="dossier-part" tabIndex={-1}>
      <Section {...section} />
    </div>
  );
}
