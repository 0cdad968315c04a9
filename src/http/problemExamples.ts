/** Facts by which a problem's page is worded where its words are computed from them. Any that are possible will do. */
export const problemExamples: Readonly<Record<string, Readonly<Record<string, unknown>>>> = {
  'blend-not-whole': { sum: 0.9 },
  'ceiling-below-sum': { sumMinor: 48_000, notToExceedMinor: 45_000, currency: 'EUR' },
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
  'seal-broken': { stream: 'rug/0217', revision: 12, reason: 'entry-altered' },
};
