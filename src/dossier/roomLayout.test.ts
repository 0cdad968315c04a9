import { expect, test } from 'vitest';
import { inventedRoom } from '../../test/support/dryingRoomFacts.ts';
import { hungRug } from '../../test/support/hungRug.ts';
import { roomLayout } from './roomLayout.ts';

const placeNamed = (spot: string, ...rugs: readonly ReturnType<typeof hungRug>[]) =>
  roomLayout(inventedRoom, rugs, () => 20).places.find((place) => place.spot === spot);

// Rule of the drying page: warp load = wet kg/m² × longest free drop. 20 kg on 2 × 3 m, folded over: 20/6 × 1.5 = 5.
test('the warps of a hung rug carry its wet mass by area times its longest free drop', () => {
  const place = placeNamed('pole-1', hungRug({ widthMm: 2000, lengthMm: 3000, areaM2: 6, spot: 'pole-1' }));
  expect(place?.rugs[0]?.warpKgPerM).toBeCloseTo(5, 9);
  expect(place).toMatchObject({ loadKg: 20, warnings: [] });
});

test('a pole that carries more than it was made for is warned of, and one of unknown strength too', () => {
  const rugs = Array.from({ length: 5 }, (_, i) => hungRug({ rug: `r${i}`, widthMm: 500, spot: 'pole-1' }));
  expect(placeNamed('pole-1', ...rugs)?.warnings.map(({ code }) => code)).toEqual(['pole-overloaded']);
  expect(placeNamed('pole-2', hungRug({ spot: 'pole-2' }))?.warnings.map(({ code }) => code)).toEqual([
    'pole-strength-unknown',
  ]);
});

// 4.2 m of pole: two rugs of 2.08 m leave 4 cm, two of 2.02 m leave 16 cm. Rule: 10 to 15 cm between rugs.
test('rugs that hang closer than ten centimetres, or do not fit, are warned of', () => {
  const two = (widthMm: number) =>
    placeNamed(
      'pole-1',
      hungRug({ rug: 'a', widthMm, spot: 'pole-1' }),
      hungRug({ rug: 'b', widthMm, spot: 'pole-1' }),
    )?.warnings;
  expect(two(2080)).toEqual([{ code: 'too-close', gapMm: 40, leastMm: 100 }]);
  expect(two(2020)).toEqual([]);
  expect(two(2200)).toMatchObject([{ code: 'does-not-fit', neededMm: 4400 }]);
});

test('a rug lies on the mesh the way it fits, and one whose place nobody named is told apart', () => {
  const lying = hungRug({ rug: 'a', widthMm: 2000, lengthMm: 3200, spot: 'mesh-1' });
  const { places, elsewhere } = roomLayout(
    inventedRoom,
    [lying, hungRug({ rug: 'b', spot: null })],
    () => 20,
  );
  expect(places.find(({ spot }) => spot === 'mesh-1')).toMatchObject({
    rugs: [{ alongMm: 3200, acrossMm: 2000, warpKgPerM: null }],
    warnings: [],
  });
  expect(elsewhere.map(({ rug }) => rug)).toEqual(['b']);
});
