import { hazardWords } from '../../core/chemistry/index.ts';
import { type Agent, productFor } from '../../core/wash/index.ts';
import { mixingPlaceOf, type ShelvedAgent } from '../../dossier/index.ts';
import { shelfAskWords } from '../../text/shelfWords.ts';
import { useShelf } from '../call/index.ts';
import { useDossier } from '../dossier/dossierView.ts';

/** What the products of this shelf that a step takes can do, as their data sheets say, and the sheets. */
export function ProductHazards({ agents }: { readonly agents: readonly Agent[] }) {
  const { now } = useDossier();
  const { standing } = useShelf();
  if (standing === null) return null;
  const place = mixingPlaceOf(standing, now);
  const products = agents.flatMap((agent) => {
    const found = productFor(agent, place);
    return standing.agents.filter((one) => found.ok && one.agent === found.value.product.id);
  });
  return products.map((product) => <Hazards key={product.agent} product={product} />);
}

function Hazards({ product: { name, signal, hazards, safetySheet } }: { readonly product: ShelvedAgent }) {
  const words = hazards.map((code) => `${hazardWords(code)} (${code}).`).join(' ');
  return (
    <p>
      <b>
        {name}
        {signal === undefined || signal === 'none' ? '' : `, ${signal}`}:
      </b>{' '}
      {signal === undefined ? `hazards not known; ${shelfAskWords.hazards.until}. ` : ''}
      {words}{' '}
      {safetySheet === undefined ? (
        'No safety data sheet is linked.'
      ) : (
        <a href={safetySheet} rel="noreferrer">
          Safety data sheet of {name}
        </a>
      )}
    </p>
  );
}
