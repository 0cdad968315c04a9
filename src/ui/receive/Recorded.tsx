import { Link } from 'wouter';
import { Button, Notice, Section } from '../kit/index.ts';
import type { Intake } from './intake.ts';

/** The receipt is on record: print it, print the labels, or take the next rug in. */
export function Recorded({ intake, onNext }: { readonly intake: Intake; readonly onNext: () => void }) {
  const rugs = intake.recorded ?? [];
  return (
    <div className="form">
      <Notice
        tone="ok"
        title={rugs.length === 1 ? 'One rug is taken in' : `${rugs.length} rugs are taken in`}
      >
        <p>
          Everything is on record
          {intake.signature === null
            ? ', without a signature: have it signed when the client is here.'
            : `, with the signature of ${intake.signature.name}.`}
        </p>
      </Notice>
      <div className="actions">
        <a
          className="btn act"
          href={`/api/consignments/${intake.consignment}/receipt.pdf`}
          target="_blank"
          rel="noreferrer"
        >
          Receipt to print
        </a>
        <Button tone="ghost" onPress={onNext}>
          Take in for the next client
        </Button>
      </div>
      {rugs.map(({ rug, number, title, tag }) => (
        <Section key={rug} title={title} aside={<span className="stepno">Dossier {number}</span>}>
          <p>
            <span className="tag">{tag}</span> Tie the tag on now, and scan it once.
          </p>
          <div className="actions">
            <a className="btn ghost" href={`/api/rugs/${rug}/label.pdf`} target="_blank" rel="noreferrer">
              Label with its code
            </a>
            <a
              className="btn ghost"
              href={`/api/rugs/${rug}/papers/condition-report.pdf`}
              target="_blank"
              rel="noreferrer"
            >
              Condition report
            </a>
            <Link className="btn ghost" href={`/rugs/${rug}`}>
              Open the dossier
            </Link>
          </div>
        </Section>
      ))}
    </div>
  );
}
