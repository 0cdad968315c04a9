import type { BathRecipe } from './bathRecipe.ts';

/**
 * The part of a bath that stays behind or is let out, with its share of everything in it.
 *
 * @param bath - the whole bath
 * @param litres - the part [L, > 0]
 * @source none: definition
 */
export function partOf(bath: BathRecipe, litres: number): BathRecipe {
  const share = litres / bath.litres;
  const add = bath.add.map((amount) => ({
    ...amount,
    grams: amount.grams === undefined ? undefined : amount.grams * share,
    millilitres: amount.millilitres === undefined ? undefined : amount.millilitres * share,
  }));
  return { ...bath, litres, add };
}

/**
 * Several baths run together: litres and agents add up, alkalinity and temperature are the means by volume.
 *
 * @param first - gives also how activity and air are reckoned
 * @param others - what runs into it
 * @source none: bookkeeping of moles and heat; no carbon dioxide escapes
 */
export function blend(first: BathRecipe, ...others: readonly BathRecipe[]): BathRecipe {
  const baths = [first, ...others];
  const litres = baths.reduce((sum, bath) => sum + bath.litres, 0);
  const mean = (of: (bath: BathRecipe) => number) =>
    baths.reduce((sum, bath) => sum + of(bath) * bath.litres, 0) / litres;
  return {
    ...first,
    litres,
    temperatureC: mean((bath) => bath.temperatureC),
    alkalinityMgPerLCaCO3: mean((bath) => bath.alkalinityMgPerLCaCO3),
    add: baths.flatMap((bath) => bath.add),
  };
}
