import { readFile } from 'node:fs/promises';
import { describe, expect, test } from 'vitest';
import { sharpPictures } from '../../src/adapters/images/sharpPictures.ts';
import { countWeave, decideNodes, weaveAnswer } from '../../src/core/weave/index.ts';

describe('the worked example examples/weave/back.jpg', () => {
  test('comes out as its README says: 31.9 × 36.3 knots in 7 cm, as woven on the loom', async () => {
    const decoded = await sharpPictures.decode(
      await readFile(new URL('../../examples/weave/back.jpg', import.meta.url)),
    );
    if (!decoded.ok) throw new Error(decoded.problem.code);
    const { widthPx, heightPx, data } = decoded.value;
    const counted = countWeave({ width: widthPx, height: heightPx, channels: 3, data });
    if (!counted.ok) throw new Error(counted.problem.code);
    const mmPerPx = 0.09943;
    const scale = {
      mmPerPx,
      weftwiseMmPerPx: mmPerPx,
      warpwiseMmPerPx: mmPerPx,
      from: 'given',
      interval95: [mmPerPx, mmPerPx],
      measured: true,
    } as const;
    const { weftwise, warpwise } = weaveAnswer(counted.value, scale, decideNodes(2, null));
    expect(Math.abs((weftwise.knotsPer7cm ?? 0) / 31.91 - 1)).toBeLessThan(0.01);
    expect(Math.abs((warpwise.knotsPer7cm ?? 0) / 36.27 - 1)).toBeLessThan(0.01);
  });
});
