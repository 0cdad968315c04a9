/** Facts by which a problem's page is worded where its words are computed from them. Any that are possible will do. */
export const problemExamples: Readonly<Record<string, Readonly<Record<string, unknown>>>> = {
  'blend-not-whole': { sum: 0.9 },
  'ceiling-below-sum': { sumMinor: 48_000, notToExceedMinor: 45_000, currency: 'EUR' },
  'drying-room-runs-away': { hour: 7, airC: 71 },
  'mark-off-the-rug': {
    field: 'the mark',
    x: 1.2,
    y: 0.4,
    xMm: 2100,
    yMm: 700,
    widthMm: 1800,
    lengthMm: 2600,
  },
  'mark-outside-rug': { xMm: 2100, yMm: 700, widthMm: 1800, lengthMm: 2600 },
  'price-above-consent': { agreedMinor: 45_000, quotedMinor: 48_000, currency: 'EUR' },
  'record-unavailable': { reason: 'disk-full' },
  'taps-not-usable': { reason: 'too-few' },
  'wash-promise-too-early': { rule: 'R39', promiseHours: 12, earliestHours: 30 },
  'card-codes-disagree': { share: 0.013, most: 0.01 },
  'card-stretched': { share: 0.009, most: 0.005 },
  'two-cards': { serials: ['7K3M4Q', '8SQMUJ'] },
  'weave-too-fine': { axis: 'weftwise', pitchPx: 3.1, least: 3.6 },
  'weave-undecided': {
    axis: 'weftwise',
    pitchesPx: [8.1, 16.2],
    candidates: [
      { weftwise: 8.1, warpwise: 9.4, weight: 0.6 },
      { weftwise: 16.2, warpwise: 9.4, weight: 0.4 },
    ],
  },
  'weave-window-outside': { window: { x: 0, y: 0, width: 900, height: 900 }, width: 800, height: 600 },
  'seal-broken': { stream: 'rug/0217', revision: 12, reason: 'entry-altered' },
};
