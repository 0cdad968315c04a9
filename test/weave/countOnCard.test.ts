import { describe, expect, test } from 'vitest';
import { zxingCodes } from '../../src/adapters/codes/zxingCodes.ts';
import { countOnCard, readCard } from '../../src/core/card/index.ts';
import { decideNodes, weaveAnswer } from '../../src/core/weave/index.ts';
import { cardOnRug } from './cardOnRug.ts';

describe('counting in the window of the card', () => {
  const shot = cardOnRug(77, {
    widthPx: 1250,
    heightPx: 1120,
    pxPerMm: 6.5,
    rollDeg: 100,
    tiltDeg: 22,
  });
  const picture = { width: shot.width, height: shot.height, channels: 3, data: shot.rgb } as const;

  test('knots in 7 cm come out right though the camera is tilted and the picture lies on its side', async () => {
    const codes = await zxingCodes.read({
      widthPx: shot.width,
      heightPx: shot.height,
      channels: 3,
      data: shot.rgb,
    });
    const reading = readCard(picture, codes, { barMm: 100 });
    if (!reading.ok) throw new Error(reading.problem.code);
    expect(Math.abs(reading.value.angleDeg - 100)).toBeLessThan(6);
    const counted = countOnCard(picture, reading.value);
    if (!counted.ok) throw new Error(counted.problem.code);
    const answer = weaveAnswer(counted.value.count, counted.value.scale, decideNodes(1, null));
    expect(Math.abs((answer.weftwise.knotsPer7cm ?? 0) / 30 - 1)).toBeLessThan(0.025);
    expect(Math.abs((answer.warpwise.knotsPer7cm ?? 0) / 34 - 1)).toBeLessThan(0.025);
    expect(answer.scale?.from).toBe('card');
    const marks = counted.value.count.weftwise.strips.flatMap((strip) => strip.marks);
    const { window } = counted.value.count;
    expect(
      marks.every(
        ([x, y]) =>
          x > window.x - 5 &&
          x < window.x + window.width + 5 &&
          y > window.y - 5 &&
          y < window.y + window.height + 5,
      ),
    ).toBe(true);
  });
});
