import { useDossier } from '../dossierView.ts';
import { Part } from '../Part.tsx';

interface PaperLink {
  readonly kind: string;
  readonly title: string;
  /** Whether the record holds anything for it yet. */
  readonly ready: boolean;
}

/** Every paper of the visit that the record can fill, as a PDF. */
export function PapersPart() {
  const { rug, standing, visit } = useDossier();
  if (visit === null) return null;
  const papers: readonly PaperLink[] = [
    {
      kind: 'condition-report',
      title: 'Condition report',
      ready: standing.marks.length > 0 || standing.surveys.length > 0,
    },
    { kind: 'identification', title: 'Identification sheet', ready: standing.claims.length > 0 },
    { kind: 'dye-test-record', title: 'Dye-test record', ready: standing.dyeTests.length > 0 },
    { kind: 'consent', title: 'Agreement to the work', ready: visit.plan !== null },
    { kind: 'work-order', title: 'Work order', ready: visit.plan !== null },
    { kind: 'wash-log', title: 'Wash log', ready: visit.steps.length > 0 },
    { kind: 'drying-log', title: 'Drying log', ready: visit.dryingStarted !== null },
    { kind: 'incident-report', title: 'Incident report', ready: visit.incidents.length > 0 },
    { kind: 'final-inspection', title: 'Final inspection', ready: visit.inspected !== null },
    { kind: 'return', title: 'Return', ready: visit.end !== null },
    { kind: 'care-sheet', title: 'Care sheet', ready: standing.claims.length > 0 },
    { kind: 'whole-dossier', title: 'The whole dossier', ready: true },
  ];
  const ready = papers.filter((paper) => paper.ready);
  const waiting = papers.filter((paper) => !paper.ready);
  const link = (href: string, title: string, form = 'PDF') => (
    <li key={href}>
      <a className="paper" href={href} target="_blank" rel="noreferrer">
        {title} <span className="why">{form}</span>
      </a>
    </li>
  );
  return (
    <Part id="papers" title="Papers">
      <ul className="papers">
        {link(`/api/consignments/${visit.received.consignment}/receipt.pdf`, 'Receipt')}
        {link(`/api/rugs/${rug}/label.pdf`, 'Tag label')}
        {ready.map(({ kind, title }) => link(`/api/rugs/${rug}/papers/${kind}.pdf`, title))}
        {link(`/api/rugs/${rug}/export.zip`, 'Everything, with photographs', 'ZIP')}
      </ul>
      {waiting.length > 0 && (
        <p className="why">
          Nothing on record yet for: {waiting.map(({ title }) => title.toLowerCase()).join(', ')}.
        </p>
      )}
    </Part>
  );
}
