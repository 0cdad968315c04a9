import type { DryingRug } from '../../src/dossier/index.ts';

/** An invented rug that was hung four hours before noon, weighed at intake. */
export const hungRug = (how: Partial<DryingRug> = {}): DryingRug => ({
  ...{ rug: 'r1', title: 'Village rug', tag: '41', widthMm: 1500, lengthMm: 2400, areaM2: 3.6 },
  ...{ ovenDry: { likely: 10, least: 9.8, most: 10.2 }, ovenDryFrom: 'weighed', fibres: { wool: 1 } },
  construction: 'knotted pile',
  ...{ room: 'attic', spot: 'pole-1', position: null, heated: null, place: 'Drying room, Pole 1' },
  ...{ wettedAt: '2026-03-02T07:00:00.000Z', hungAt: '2026-03-02T08:00:00.000Z' },
  ...{ extraction: 'squeegee and vacuum', looks: [], airAtMostC: 30 },
  postures: [{ when: '2026-03-02T08:00:00.000Z', posture: 'hung' }],
  ...how,
});
