import { expect, test } from 'vitest';
import { backWithCard } from './support/backs.ts';
import { setUpHouse } from './support/door.ts';
import { textOf } from './support/hand.ts';
import { openWorkshop, phone } from './support/workshop.ts';

const workshop = openWorkshop();

test('a photograph with the card on it is counted in true lengths, on a phone, without leaving it', async () => {
  const hand = await workshop.device(phone);
  await setUpHouse(hand, workshop.server());
  await hand.page.goto('/bench/weave');
  const asked: string[] = [];
  hand.page.on('request', (request) => asked.push(new URL(request.url()).origin));
  await hand.photograph(
    'Choose or take a photograph',
    await backWithCard({ seed: 77, weftwiseKnotsPer7cm: 30, warpwiseKnotsPer7cm: 34, serial: '7K3M4Q' }),
  );
  await hand.see('Weave card 7K3M4Q found');
  await hand.choose('On this rug a knot shows', 'One node');
  // What the loom wove; the interval of a card nobody measured is three per cent.
  for (const [way, woven] of [
    ['Across', 30],
    ['Along', 34],
  ] as const) {
    const line = await textOf(hand.scope.getByText(new RegExp(`^${way}: `)));
    expect(Math.abs(Number(/[\d.]+/.exec(line)?.[0]) / woven - 1)).toBeLessThan(0.03);
  }
  const own = new URL(workshop.server().address).origin;
  expect(asked.filter((origin) => origin !== own && origin !== 'null')).toEqual([]);
});
