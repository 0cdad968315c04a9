import { useRug } from '../call/index.ts';
import { Busy, ProblemNotice } from '../kit/index.ts';

/** One rug's story, with the next sensible action in reach. */
export function DossierPage({ rug }: { readonly rug: string }) {
  const { standing, isLoading, problem } = useRug(rug);
  if (isLoading) return <Busy words="Opening the dossier" />;
  return (
    <div className="page">
      <ProblemNotice problem={problem} />
      <h1>{standing.opened?.title ?? 'Dossier'}</h1>
    </div>
  );
}
