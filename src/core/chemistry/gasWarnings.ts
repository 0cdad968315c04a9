import type { Speciation } from './bathPh.ts';

export type GasWarning = {
  readonly gas: 'sulfur dioxide' | 'chlorine' | 'chloramines';
  readonly level: 'ventilate' | 'blocked';
  /** Share of the family in the form that gasses. */
  readonly freeShare: number;
};

/** Bounds of R24. @source workshop-setting: below pH 4 blocked, 4 to 5 ventilate */
const sulfiteBounds = { blockedBelowPh: 4, ventilateBelowPh: 5 } as const;

/**
 * Gases a bath gives off, by how its sulfite or hypochlorite stands at its pH. Hypochlorite with any
 * acid or ammonia is blocked whatever the figures say.
 *
 * @param speciation - the bath's balance
 * @param acids - acid families in the bath [mol/L]
 * @source crc-handbook pKa of sulfurous and hypochlorous acid; bounds are workshop settings
 */
export function gasWarnings(
  { pH, shares }: Speciation,
  acids: Readonly<Record<string, number>>,
): readonly GasWarning[] {
  const warnings: GasWarning[] = [];
  const has = (acid: string) => (acids[acid] ?? 0) > 0;
  // Dithionite and thiosulfate fall apart to sulfite, the faster the more acid the bath.
  if ((has('sulfurous') || has('dithionous') || has('thiosulfuric')) && pH < sulfiteBounds.ventilateBelowPh) {
    const level = pH < sulfiteBounds.blockedBelowPh ? 'blocked' : 'ventilate';
    warnings.push({ gas: 'sulfur dioxide', level, freeShare: shares['sulfurous']?.[0] ?? 0 });
  }
  if (has('hypochlorous')) {
    const others = Object.keys(acids).some(
      (acid) => acid !== 'hypochlorous' && acid !== 'carbonic' && has(acid),
    );
    const freeShare = shares['hypochlorous']?.[0] ?? 0;
    if (has('ammonium')) warnings.push({ gas: 'chloramines', level: 'blocked', freeShare });
    else if (others || freeShare > 0.1) warnings.push({ gas: 'chlorine', level: 'blocked', freeShare });
  }
  return warnings;
}
