/**
 * Reads a number as a person types it. A comma and a point both mark decimals, and thousands are never
 * marked: a reading that could be a thousand times off is no reading.
 *
 * @returns the number, or null when the text is not one plain number
 */
export const readNumber = (text: string): number | null =>
  /^[-−]?(\d+([.,]\d*)?|[.,]\d+)$/.test(text.trim())
    ? Number(text.trim().replace('−', '-').replace(',', '.'))
    : null;
