import { describe, expect, test } from 'vitest';
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

describe('rugs whose place along the pole was measured', () => {
  const at = (tag: string, from: 'left' | 'right', mm: number, widthMm = 1000) =>
    hungRug({ rug: tag, tag, widthMm, spot: 'pole-1', position: { from, mm } });
  const told = (...rugs: readonly ReturnType<typeof hungRug>[]) => placeNamed('pole-1', ...rugs);

  // 4.2 m of pole: 0.3 m from the left to 1.3 m; 0.4 m from the right is 2.8 m to 3.8 m; 1.5 m between them.
  test('hang in their order at their true places, with the gap between them', () => {
    const place = told(at('b', 'right', 400), at('a', 'left', 300));
    expect(place?.rugs.map(({ rug, fromMm }) => [rug.tag, fromMm])).toEqual([
      ['a', 300],
      ['b', 2800],
    ]);
    expect(place?.gaps).toMatchObject([{ fromMm: 1300, gapMm: 1500, isMeasured: true, between: ['a', 'b'] }]);
    expect(place?.warnings).toEqual([]);
  });

  test('are warned of by name when they hang too close, overlap or reach past the end', () => {
    expect(told(at('a', 'left', 300), at('b', 'left', 1360))?.warnings).toEqual([
      { code: 'too-close', gapMm: 60, leastMm: 100, between: ['a', 'b'] },
    ]);
    expect(told(at('a', 'left', 300), at('b', 'left', 1200))?.warnings).toEqual([
      { code: 'overlaps', byMm: 100, between: ['a', 'b'] },
    ]);
    expect(told(at('a', 'left', 3500))?.warnings).toEqual([{ code: 'past-the-end', byMm: 300, tag: 'a' }]);
  });

  test('leave the longest free stretch to one nobody measured, drawn as such', () => {
    const unmeasured = hungRug({ rug: 'c', tag: 'c', widthMm: 1000, spot: 'pole-1' });
    const place = told(at('a', 'left', 0), unmeasured);
    expect(place?.rugs.map(({ rug, fromMm, isMeasured }) => [rug.tag, fromMm, isMeasured])).toEqual([
      ['a', 0, true],
      ['c', 2100, false],
    ]);
    expect(place?.warnings).toEqual([]);
    // 3 m taken of 4.2 m leave 1.2 m: a rug of 1.15 m has 5 cm, however it is hung.
    const tight = hungRug({ rug: 'c', tag: 'c', widthMm: 1150, spot: 'pole-1' });
    expect(told(at('a', 'left', 0, 3000), tight)?.warnings).toMatchObject([{ code: 'too-close' }]);
  });
});

// Lifting filter of the shop's facts: 25 kg, HSE INDG143.
test('a rug heavier wet than one person may lift is marked for a team', () => {
  const lift = (kg: number) => roomLayout(inventedRoom, [hungRug()], () => kg).places[0]?.rugs[0]?.isTeamLift;
  expect([lift(24), lift(26)]).toEqual([false, true]);
});
