import sharp from 'sharp';
import { expect, test } from 'vitest';
import { zxingCodes } from '../../src/adapters/codes/zxingCodes.ts';
import { tagLabel } from '../../src/papers/tagLabel.ts';

test('a label photographed with a phone in poor light opens the dossier', async () => {
  const link = 'https://192.168.1.20:8470/rugs/0198b1f2-7c1e-7d2a-9f00-3a5b6c7d8e9f';
  const svg = tagLabel({
    tag: '41',
    number: '0217',
    title: 'Runner',
    workshop: 'Fern Lane',
    code: zxingCodes.draw(link),
  });
  const { data, info } = await sharp(Buffer.from(svg), { density: 300 })
    .flatten({ background: '#e8e0d0' })
    .rotate(7, { background: '#8a7a66' })
    .linear(0.5, 40)
    .blur(1.2)
    .removeAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  const found = await zxingCodes.read({ widthPx: info.width, heightPx: info.height, channels: 3, data });
  expect(found.map(({ text }) => text)).toEqual([link]);
});
