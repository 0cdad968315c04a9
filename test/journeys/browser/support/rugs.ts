import sharp from 'sharp';
import { zxingCodes } from '../../../../src/adapters/codes/zxingCodes.ts';
import { paintCard } from '../../../../src/demo/paint/paintBlot.ts';
import { paintRug } from '../../../../src/demo/paint/paintRug.ts';
import type { RugDesign } from '../../../../src/demo/paint/rugDesign.ts';

const mat: RugDesign = {
  ...{ seed: 31, widthMm: 600, lengthMm: 820, ground: '#7d2f26', border: '#27406b', accent: '#d9c9a3' },
  ...{ second: '#31523a', dark: '#231c15', fringe: null, field: 'diamonds', borders: 2, abrash: 0.2 },
  ...{ gaugeMm: 7, troubles: [] },
};

/** Corners of the mat on its picture: start-left, start-right, end-right, end-left. */
export const matCorners = (() => {
  const floorMm = 160;
  const [x, y] = [floorMm / (mat.widthMm + 2 * floorMm), floorMm / (mat.lengthMm + 2 * floorMm)];
  return [
    { x, y: 1 - y },
    { x: 1 - x, y: 1 - y },
    { x: 1 - x, y },
    { x, y },
  ];
})();

/** A mat photographed from above with a weave card on it; `soil` is dust over it, `green` another green. */
export const matPicture = (how: { readonly soil: number; readonly green?: string }): Promise<Buffer> =>
  sharp(
    Buffer.from(
      paintRug({ ...mat, ...(how.green === undefined ? {} : { second: how.green }) }, 'face', {
        soil: how.soil,
        laid: paintCard('K7Q4WF', zxingCodes),
        longPx: 2100,
      }),
    ),
  )
    .jpeg({ quality: 88 })
    .toBuffer();
