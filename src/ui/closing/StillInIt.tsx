import { Link } from 'wouter';
import type { RugStanding, WorkshopSettings } from '../../dossier/index.ts';
import { Notice } from '../kit/index.ts';
import { stillInItWords } from './stillInIt.ts';

interface StillInItProps {
  readonly rug: string;
  readonly standing: RugStanding;
  readonly settings: WorkshopSettings;
}

/** Warns that something would go home in the rug; it holds nobody up. */
export function StillInIt({ rug, standing, settings }: StillInItProps) {
  const words = stillInItWords(standing, settings);
  if (words === null) return null;
  return (
    <Notice tone="caution" title="Not shown to be out of the rug">
      <ul>
        {words.what.map((one) => (
          <li key={one}>{one}</li>
        ))}
      </ul>
      <p>{words.matters}</p>
      {words.now.map((one) => (
        <p key={one}>{one}</p>
      ))}
      <Link className="btn ghost" href={`/rugs/${rug}?at=wash`}>
        To “Still in the rug”
      </Link>
    </Notice>
  );
}
