const significant = (value: number): string =>
  String(Number(value >= 100 ? value.toFixed(0) : value >= 10 ? value.toFixed(1) : value.toPrecision(2)));

/** An amount as it is measured out: 4.32 kg, 250 mL, 56 mg. */
export function amountText(value: number, unit: 'g' | 'mL'): string {
  if (value >= 1000) return `${(value / 1000).toFixed(2)} ${unit === 'g' ? 'kg' : 'L'}`;
  return unit === 'g' && value > 0 && value < 0.1
    ? `${significant(value * 1000)} mg`
    : `${significant(value)} ${unit}`;
}

/** `20 – 50 mL`, or one figure where both ends read the same. */
export function rangeText(least: number, most: number, unit: 'g' | 'mL'): string {
  const [from, to] = [amountText(least, unit), amountText(most, unit)];
  if (from === to) return from;
  const [low, lowUnit] = from.split(' ');
  return lowUnit === to.split(' ')[1] ? `${low} – ${to}` : `${from} – ${to}`;
}
