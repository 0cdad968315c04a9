import { useState } from 'react';
import { useMe } from '../call/index.ts';
import { Notice, Section } from '../kit/index.ts';
import { ExportRug } from './ExportRug.tsx';
import { OwnerOnly } from './OwnerOnly.tsx';
import { Rebuild } from './Rebuild.tsx';
import { Verify } from './Verify.tsx';

/** Keeping the record whole: check it, copy it, hand one dossier out. */
export function SafekeepingPage() {
  const me = useMe();
  const isOwner = me?.roles.includes('owner') === true;
  return (
    <div className="page">
      <h1>Safekeeping</h1>
      <p className="lead">Nothing recorded is ever changed. Here you see that this is so, and keep copies.</p>
      <div className="cols two" style={{ marginTop: 18 }}>
        <Verify isOwner={isOwner} />
        <Section title="Back up the whole house">
          <p>
            One file with every entry and every photograph. Keep it on a disk that is not in this machine, and
            another one out of the house.
          </p>
          <Notice tone="caution" title="The file holds your clients’ data.">
            <p>Keep it where only you can read it. It also holds the keys of clients erased later.</p>
          </Notice>
          {isOwner ? (
            <Download href="/api/safekeeping/backup.zip" words="Download a backup" />
          ) : (
            <OwnerOnly />
          )}
        </Section>
        <ExportRug />
        <Section title="Rebuild the lists">
          <p>
            Lists and search are kept beside the entries. Should a list ever disagree with a dossier, this
            makes all lists anew from the entries; the entries are not touched.
          </p>
          {isOwner ? <Rebuild /> : <OwnerOnly />}
        </Section>
      </div>
    </div>
  );
}

/** The browser itself shows how a download goes on; this says that it was asked for. */
function Download({ href, words }: { readonly href: string; readonly words: string }) {
  const [isAsked, setAsked] = useState(false);
  return (
    <>
      <a className="btn" href={href} download onClick={() => setAsked(true)}>
        {words}
      </a>
      {isAsked ? (
        <p className="hint" role="status">
          The server gathers it; with many photographs this takes minutes. Your browser shows the download.
        </p>
      ) : null}
    </>
  );
}
