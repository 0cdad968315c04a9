import type { ShelfFact } from '../../dossier/index.ts';

const sheet = (name: string) => ({ safetySheet: `https://sheets.larkfield.example/${name}` });

/** Products with invented names from invented suppliers; what is in them is ordinary chemistry. */
export const demoShelf = (dayAfter: (days: number) => string): readonly ShelfFact[] => [
  {
    ...{ type: 'AgentShelved', agent: 'hearth-citric', name: 'Hearth crystals', serves: ['citric acid'] },
    parts: [{ kind: 'acid', chemical: 'citric acid, monohydrate', value: 99.5, unit: '% w/w' }],
    ...{ unit: 'g', signal: 'Warning', hazards: ['H319', 'H335'], reorderBelow: 5000 },
    ...{ ph: { value: 2.1, gramsPerLitre: 20 }, ...sheet('hearth-crystals') },
    ...{ supplier: 'Hollow Mill Supplies', price: { amountMinor: 1450, currency: 'EUR' }, pack: 2500 },
  },
  {
    ...{ type: 'LotReceived', agent: 'hearth-citric', lot: 'K-214', amount: 4200 },
    ...{ receivedOn: dayAfter(-110), expires: dayAfter(400) },
  },
  {
    ...{
      type: 'AgentShelved',
      agent: 'meadow-wash',
      name: 'Meadow wool wash',
      serves: ['neutral detergent'],
    },
    parts: [{ kind: 'surfactant', value: 25, unit: '% w/w' }],
    ...{ unit: 'mL', densityGPerMl: 1.03, ph: { value: 7.1, gramsPerLitre: 10 } },
    ...{ signal: 'Warning', hazards: ['H315', 'H319'], reorderBelow: 5000, ...sheet('meadow-wool-wash') },
    ...{ supplier: 'Hollow Mill Supplies', price: { amountMinor: 3890, currency: 'EUR' }, pack: 5000 },
  },
  {
    ...{ type: 'LotReceived', agent: 'meadow-wash', lot: 'M-77', amount: 3100 },
    ...{ receivedOn: dayAfter(-90), expires: dayAfter(250) },
  },
  {
    ...{ type: 'AgentShelved', agent: 'pale-reducer', name: 'Pale reducer', serves: ['metabisulfite'] },
    parts: [{ kind: 'reducer', chemical: 'sodium metabisulfite', value: 97, unit: '% w/w' }],
    ...{
      unit: 'g',
      signal: 'Danger',
      hazards: ['H302', 'H318'],
      reorderBelow: 500,
      ...sheet('pale-reducer'),
    },
    ...{ supplier: 'Brook & Vane Chemistry', price: { amountMinor: 920, currency: 'EUR' }, pack: 1000 },
  },
  {
    ...{ type: 'LotReceived', agent: 'pale-reducer', lot: 'P-9', amount: 800 },
    ...{ receivedOn: dayAfter(-400), expires: dayAfter(-20) },
  },
  {
    ...{ type: 'AgentShelved', agent: 'well-oxygen', name: 'Well oxygen', serves: ['hydrogen peroxide'] },
    parts: [{ kind: 'oxidiser', chemical: 'hydrogen peroxide', value: 12, unit: '% w/w' }],
    ...{ unit: 'mL', densityGPerMl: 1.04, signal: 'Danger', hazards: ['H302', 'H318'] },
    ...sheet('well-oxygen'),
  },
  {
    ...{ type: 'LotReceived', agent: 'well-oxygen', lot: 'W-31', amount: 1900 },
    ...{ receivedOn: dayAfter(-95), expires: dayAfter(90) },
  },
  // Bought over the counter: nobody has asked for its data sheet yet.
  {
    ...{ type: 'AgentShelved', agent: 'pantry-vinegar', name: 'Pantry vinegar', serves: ['acetic acid'] },
    parts: [{ kind: 'acid', chemical: 'acetic acid', unit: '% w/w' }],
    ...{ unit: 'mL', densityGPerMl: 1.01, hazards: [] },
  },
  { type: 'LotReceived', agent: 'pantry-vinegar', lot: 'none', amount: 5000, receivedOn: dayAfter(-88) },
  {
    ...{ type: 'AgentShelved', agent: 'thistle-solvent', name: 'Thistle solvent', serves: ['dry solvent'] },
    parts: [{ kind: 'solvent', value: 100, unit: '% w/w' }],
    ...{ unit: 'mL', densityGPerMl: 0.76, signal: 'Danger', hazards: ['H226', 'H304'] },
  },
  { type: 'LotReceived', agent: 'thistle-solvent', lot: 'T-5', amount: 900, expires: dayAfter(500) },
  {
    ...{ type: 'AgentShelved', agent: 'brook-binder', name: 'Brook binder', serves: ['chelator'] },
    parts: [{ kind: 'chelator', value: 40, unit: '% w/w' }],
    ...{ unit: 'mL', densityGPerMl: 1.2, signal: 'Warning', hazards: ['H319'] },
  },
  { type: 'LotReceived', agent: 'brook-binder', lot: 'B-12', amount: 700, expires: dayAfter(300) },
  {
    ...{ type: 'WaterMeasured', on: dayAfter(-120), from: 'the town’s water sheet' },
    ...{ alkalinity: { value: 4.9, unit: 'mmol/L acid' }, hardness: { value: 16, unit: '°dH' } },
    ...{ ph: 7.6, conductivityUsPerCm: 620, ironMgPerL: 0.05, temperatureC: 12 },
  },
];
