import { useState } from 'react';
import type { NotedClaim } from '../../../dossier/index.ts';
import { Button, When } from '../../kit/index.ts';
import { ResiduePart } from '../../wash/ResiduePart.tsx';
import { useDossier } from '../dossierView.ts';
import { Part } from '../Part.tsx';
import { ColoursPart } from './ColoursPart.tsx';
import { type About, abouts, binding, claimWords } from './claimWords.ts';
import { FindingsPart } from './FindingsPart.tsx';
import { FoundationPart } from './FoundationPart.tsx';
import { KnotsPart } from './KnotsPart.tsx';

/** A possible claim or the client's word alone is kept, but counts as unknown. */
const tooWeak = (claim: NotedClaim) => claim.confidence === 'possible' || claim.evidence === 'client says';

function ClaimRow({ about }: { readonly about: About }) {
  const { standing, open, nameOf, ask } = useDossier();
  const said = standing.claims.filter((claim) => claim.about === about);
  const latest = said.at(-1);
  const earlier = said
    .slice(0, -1)
    .filter((claim) => claimWords(claim).value !== (latest && claimWords(latest).value));
  const isBinding = binding.includes(about);
  return (
    <li className="claim">
      <div>
        <div className="claim-name">{abouts[about].name}</div>
        {latest === undefined ? (
          <div>
            <span className={isBinding ? 'open-fact' : 'why'}>not known{isBinding ? ' ▲' : ''}</span>
            <div className="why">
              {isBinding ? 'Counts as the most sensitive it could be. ' : ''}
              {abouts[about].why}
            </div>
          </div>
        ) : (
          <div>
            <div className="claim-value">{claimWords(latest).value}</div>
            <div className="why">
              {latest.evidence}, {latest.confidence} · {nameOf(latest.by)} <When at={latest.when} />
              {isBinding && tooWeak(latest) ? ' · too weak to plan on: counts as unknown' : ''}
              {latest.note === undefined ? '' : ` · ${latest.note}`}
            </div>
            {earlier.map((claim) => (
              <div className="why" key={`${claim.entry}${claimWords(claim).value}`}>
                earlier: {claimWords(claim).value} ({claim.evidence}, {claim.confidence}, {nameOf(claim.by)})
              </div>
            ))}
          </div>
        )}
      </div>
      {open && (
        <Button
          tone="ghost"
          onPress={() => ask({ kind: 'claim', about })}
          label={`${latest ? 'Change' : 'Say'}: ${abouts[about].name}`}
        >
          {latest === undefined ? 'Say' : 'Change'}
        </Button>
      )}
    </li>
  );
}

/** What the rug is: each fact with its evidence and how sure it is. */
export function IdentifySection() {
  const { standing } = useDossier();
  const [all, setAll] = useState(false);
  const known = new Set<About>(standing.claims.map((claim) => claim.about));
  const order = Object.keys(abouts) as readonly About[];
  const shown = order.filter((one) => all || binding.includes(one) || known.has(one) || one === 'knot');
  return (
    <>
      <Part title="What it is" id="identify">
        <ul className="claims">
          {shown.map((one) => (
            <ClaimRow key={one} about={one} />
          ))}
        </ul>
        {shown.length < order.length && (
          <Button tone="ghost" onPress={() => setAll(true)} wide>
            More to say:{' '}
            {order
              .filter((one) => !shown.includes(one))
              .map((one) => abouts[one].name.toLowerCase())
              .slice(0, 4)
              .join(', ')}{' '}
            …
          </Button>
        )}
      </Part>
      <FindingsPart />
      <ResiduePart />
      <FoundationPart />
      <ColoursPart />
      <KnotsPart />
    </>
  );
}
