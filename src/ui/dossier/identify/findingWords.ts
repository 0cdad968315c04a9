import type { FindingCode } from '../../../core/wash/index.ts';

export interface FindingWords {
  readonly name: string;
  /** What to look for, in plain words. */
  readonly look: string;
}

export interface FindingGroup {
  readonly title: string;
  readonly findings: { readonly [F in FindingCode]?: FindingWords };
}

/** Everything that decides what a rug can bear, as it is looked for at the bench. */
export const findingGroups: readonly FindingGroup[] = [
  {
    title: 'Life and danger',
    findings: {
      'active moth': {
        name: 'Living moth',
        look: 'Larvae, fresh webbing, grit that comes back after brushing.',
      },
      'active beetle': { name: 'Living beetle', look: 'Hairy larvae, shed skins, round holes.' },
      'active mould': { name: 'Active mould', look: 'Fuzzy growth that smears, musty smell, damp spots.' },
      'old insecticide': {
        name: 'Old insecticide',
        look: 'White crystals, sweet or chemical smell, collection labels, before about 1970.',
      },
      'category 3 water': {
        name: 'Contaminated water',
        look: 'Sewage, flood or long-standing water has been in it.',
      },
    },
  },
  {
    title: 'Foundation and edges',
    findings: {
      'dry rot': { name: 'Dry rot', look: 'Cracks softly when folded by the ear; threads break like paper.' },
      'weak foundation': { name: 'Weak foundation', look: 'Warps give when pulled lightly.' },
      hole: { name: 'Hole', look: 'Light shows through.' },
      tear: { name: 'Tear or split', look: 'Cut, torn or split warps or wefts.' },
      'open ends': { name: 'Open ends', look: 'Knots can slip off at the start or end.' },
      'cut sides': { name: 'Cut sides', look: 'The side cord is missing or cut.' },
      lined: { name: 'Lined', look: 'A cloth is sewn to the back.' },
      'cut and sewn': { name: 'Cut and sewn', look: 'Pieces joined by a seam.' },
    },
  },
  {
    title: 'Colour',
    findings: {
      'colour run': { name: 'Colours have run', look: 'A halo of red or blue in the light parts.' },
      painted: { name: 'Painted', look: 'Colour sits on the tips and is stiff.' },
      inked: { name: 'Inked', look: 'Pen or marker on worn foundation.' },
      'touched up': { name: 'Touched up', look: 'A shade that does not go down to the knot.' },
      'tip fading': { name: 'Tip fading', look: 'The tips are paler than the base of the pile.' },
      'tea wash': { name: 'Tea wash', look: 'A brown tone over everything, lighter at the base.' },
      'antique wash': { name: 'Antique wash', look: 'Softened, bleached tone with a hard shine.' },
      'over-dyed': { name: 'Over-dyed', look: 'One colour over all, fringe too.' },
      'corroded brown': {
        name: 'Corroded brown',
        look: 'Dark brown or black lies lower than its neighbours.',
      },
      urine: { name: 'Urine', look: 'Smell, yellow fluorescence under an ultraviolet lamp, stiff patch.' },
    },
  },
  {
    title: 'Foreign parts and old repairs',
    findings: {
      'old repair': { name: 'Old repair', look: 'Other yarn, other knot, darn or patch.' },
      glue: { name: 'Glue', look: 'Hard or shiny on the back.' },
      tape: { name: 'Tape', look: 'Along sides or ends.' },
      'iron-on patch': { name: 'Iron-on patch', look: 'A cloth that was ironed on.' },
      'metal thread': { name: 'Metal thread', look: 'Wrapped or woven in.' },
      beads: { name: 'Beads', look: 'Sewn on or knotted in.' },
      'leather parts': { name: 'Leather parts', look: 'Straps or binding.' },
      'wood parts': { name: 'Wood parts', look: 'Rods or toggles.' },
      'long thick pile': { name: 'Long thick pile', look: 'Pile above about 15 mm.' },
      'damage during work': {
        name: 'Damage found during work',
        look: 'Something that was not there at the door.',
      },
    },
  },
];

/** Words of a finding; a code nobody has worded yet stands as its code. */
export const findingWords = (code: FindingCode): FindingWords =>
  findingGroups.map(({ findings }) => findings[code]).find((words) => words !== undefined) ?? {
    name: code,
    look: '',
  };
