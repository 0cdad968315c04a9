import { useDeferredValue, useState } from 'react';
import { useRows } from '../call/index.ts';
import { LineField, ProblemNotice, Section, Tag } from '../kit/index.ts';

/** One dossier as a file: entries with their seals, photographs, papers. */
export function ExportRug() {
  const [find, setFind] = useState('');
  const wanted = useDeferredValue(find.trim());
  const { rows, isFetching, problem } = useRows({ find: wanted, limit: 8 }, wanted !== '');
  return (
    <Section title="Hand out one dossier">
      <p>
        For the client, an insurer, a court or a later restorer: everything recorded of one rug, verifiable
        alone.
      </p>
      <LineField label="Find the rug by tag, client or word" type="search" value={find} onChange={setFind} />
      <ProblemNotice problem={problem} />
      <ul className="rows" aria-live="polite">
        {(wanted === '' ? [] : rows).map((row) => (
          <li key={row.rug} className="row plain">
            <div>
              {row.tag === null ? null : <Tag tag={row.tag} />}
              {row.body.title}
              <div className="sub">
                dossier {row.body.number}
                {row.clientName === null ? '' : ` · ${row.clientName}`}
              </div>
            </div>
            <a className="btn ghost" href={`/api/rugs/${encodeURIComponent(row.rug)}/export.zip`} download>
              Download
              <span className="unseen"> the dossier of {row.body.title}</span>
            </a>
          </li>
        ))}
      </ul>
      {wanted !== '' && rows.length === 0 && !isFetching && problem === null ? (
        <p className="hint">No rug answers to “{wanted}”.</p>
      ) : null}
    </Section>
  );
}
