import type { RugFactOf } from '../../../dossier/index.ts';
import { figure } from '../figures.ts';

export type Claim = RugFactOf<'RugIdentified'>['claims'][number];
export type About = Claim['about'];

/** Everything that may be said about a rug, in the order it is asked. */
export const abouts: { readonly [A in About]: { readonly name: string; readonly why: string } } = {
  construction: { name: 'Construction', why: 'Decides the method: look at the back and part the pile.' },
  pile: { name: 'Pile', why: 'Decides pH, warmth and brushing. Burn or solubility tests where in doubt.' },
  warp: { name: 'Warp', why: 'Seen at the fringe, which is the warp itself.' },
  weft: { name: 'Weft', why: 'Seen between the knots on the back, and at the selvedge.' },
  backing: { name: 'Backing', why: 'Only tufted and hooked pieces have one.' },
  latex: {
    name: 'Latex',
    why: 'Tufted pieces only: failing latex is powdery or smells, and the backing lets go.',
  },
  knot: { name: 'Knot', why: 'Symmetrical or asymmetrical shows on a folded row.' },
  period: { name: 'Period', why: 'Bounds only: the earliest and the latest year the evidence allows.' },
  finish: { name: 'Finish', why: 'Tea or antique wash, over-dye, lustre wash, paint.' },
  origin: { name: 'Origin', why: 'Where it was woven, with what speaks for it.' },
  maker: { name: 'Maker', why: 'Signature, workshop or weaver, if known.' },
  subject: { name: 'Subject', why: 'What is shown: a garden, a prayer niche, medallions.' },
  title: { name: 'Title', why: 'A name the piece is known by.' },
  'inscriptions and markings': { name: 'Inscriptions and markings', why: 'Dates, names, labels, stamps.' },
  'distinguishing features': { name: 'Distinguishing features', why: 'What tells it from its sister.' },
  description: { name: 'Description', why: 'In your own words.' },
};

/** Facts whose absence tightens the plan to the most sensitive candidate. */
export const binding: readonly About[] = ['construction', 'pile', 'warp', 'weft'];

const shares = (fibres: Readonly<Record<string, number | undefined>>): string => {
  const known = Object.entries(fibres).filter((entry): entry is [string, number] => entry[1] !== undefined);
  if (known.length === 1) return known[0]?.[0] ?? '';
  return known.map(([fibre, share]) => `${figure(share * 100)} % ${fibre}`).join(', ');
};

const spokenValue = (claim: Claim): string => {
  switch (claim.about) {
    case 'construction':
      return claim.construction;
    case 'pile':
      return shares(claim.fibres);
    case 'warp':
    case 'weft':
    case 'backing':
      return claim.fibre;
    case 'latex':
      return claim.latex;
    case 'knot':
      return claim.knot;
    case 'period':
      return periodWords(claim.fromYear, claim.untilYear);
    case 'finish':
    case 'origin':
    case 'maker':
    case 'subject':
    case 'title':
    case 'inscriptions and markings':
    case 'distinguishing features':
    case 'description':
      return claim.words;
  }
};

const periodWords = (from: number | undefined, until: number | undefined): string => {
  if (from === undefined && until === undefined) return 'unknown';
  if (from === undefined) return `not after ${until}`;
  return until === undefined ? `not before ${from}` : `${from} to ${until}`;
};

/** A claim as name and value. */
export const claimWords = (claim: Claim): { readonly name: string; readonly value: string } => ({
  name: abouts[claim.about].name,
  value: spokenValue(claim),
});
