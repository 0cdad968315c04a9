const figure = (value: number): string =>
  value >= 100 ? value.toFixed(0) : value >= 10 ? value.toFixed(1) : value.toFixed(2);

/** An amount as it is read from a container: 4.32 kg, 250 mL. */
export const amountText = (value: number, unit: 'g' | 'mL'): string =>
  value >= 1000 ? `${(value / 1000).toFixed(2)} ${unit === 'g' ? 'kg' : 'L'}` : `${figure(value)} ${unit}`;
