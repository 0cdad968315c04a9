/** Decimals a currency is written with; 2 where it is not known to the browser. */
export function moneyDecimals(currency: string): number {
  try {
    return (
      new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ??
      2
    );
  } catch {
    return 2;
  }
}

/** An amount as a person reads it, e.g. `120.00 EUR`. */
export const moneyText = (amountMinor: number, currency: string): string => {
  const decimals = moneyDecimals(currency);
  return `${(amountMinor / 10 ** decimals).toFixed(decimals)} ${currency}`;
};
