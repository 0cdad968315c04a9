/** How one measured length or width stands against the same one at intake. */
export interface SizeChange {
  readonly beforeMm: number;
  readonly afterMm: number;
  readonly changeMm: number;
  /** Half the interval the change is known in. */
  readonly uncertaintyMm: number;
  readonly verdict: 'no change to be seen' | 'smaller' | 'larger';
}

interface Sizes {
  readonly lengthsMm: readonly number[];
  readonly widthsMm: readonly number[];
  /** Of one end of a measured length. */
  readonly uncertaintyMm: number;
}

/**
 * Three lengths and three widths after the work against those at intake. A change smaller than four ends
 * of a tape can hide is called none.
 *
 * @param before - at intake [mm], the same places in the same order
 * @param after - after the work [mm]
 * @returns one comparison for each place measured both times
 * @source jcgm-100, 5.1.2 (four independent ends add in quadrature)
 */
export function sizeChanges(
  before: Sizes,
  after: Sizes,
): { readonly lengths: readonly SizeChange[]; readonly widths: readonly SizeChange[] } {
  const uncertaintyMm = Math.sqrt(2 * before.uncertaintyMm ** 2 + 2 * after.uncertaintyMm ** 2);
  const compare = (was: readonly number[], is: readonly number[]): readonly SizeChange[] =>
    was.flatMap((beforeMm, index) => {
      const afterMm = is[index];
      if (afterMm === undefined) return [];
      const changeMm = afterMm - beforeMm;
      const verdict =
        Math.abs(changeMm) <= uncertaintyMm ? 'no change to be seen' : changeMm < 0 ? 'smaller' : 'larger';
      return [{ beforeMm, afterMm, changeMm, uncertaintyMm, verdict }];
    });
  return {
    lengths: compare(before.lengthsMm, after.lengthsMm),
    widths: compare(before.widthsMm, after.widthsMm),
  };
}
