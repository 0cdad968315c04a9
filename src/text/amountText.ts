interface Scale {
  readonly unit: string;
  readonly times: number;
}

/** The unit an amount is read in; of a range, that of its upper end. */
const scaleOf = (value: number, unit: 'g' | 'mL'): Scale => {
  if (value >= 1000) return { unit: unit === 'g' ? 'kg' : 'L', times: 0.001 };
  return unit === 'g' && value > 0 && value < 0.1 ? { unit: 'mg', times: 1000 } : { unit, times: 1 };
};

const figureIn = (value: number, { unit, times }: Scale): string => {
  const read = value * times;
  if (unit === 'kg' || unit === 'L') return read.toFixed(2);
  if (unit === 'mg') return String(Number(read.toFixed(read >= 10 ? 0 : 1)));
  return String(Number(read >= 100 ? read.toFixed(0) : read >= 10 ? read.toFixed(1) : read.toPrecision(2)));
};

/** An amount as it is measured out: 4.32 kg, 250 mL, 56 mg; in the unit of a range it stands beside. */
export function amountText(value: number, unit: 'g' | 'mL', most: number = value): string {
  const scale = scaleOf(most, unit);
  return `${figureIn(value, scale)} ${scale.unit}`;
}

/** `20 – 50 mL`, or one figure where both ends read the same. */
export function rangeText(least: number, most: number, unit: 'g' | 'mL'): string {
  const scale = scaleOf(most, unit);
  const [low, high] = [figureIn(least, scale), figureIn(most, scale)];
  return low === high ? `${high} ${scale.unit}` : `${low} – ${high} ${scale.unit}`;
}
