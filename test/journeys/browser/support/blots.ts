import sharp from 'sharp';
import { zxingCodes } from '../../../../src/adapters/codes/zxingCodes.ts';
import { type BlotPicture, paintBlot } from '../../../../src/demo/paint/paintBlot.ts';

/** A photograph of a white test cloth under a weave card. */
export const blotPicture = (picture: Partial<BlotPicture> = {}): Promise<Buffer> =>
  sharp(
    Buffer.from(
      paintBlot({ serial: 'K7Q4WF', seed: 11, clean: '#ebe6dc', stained: null, ...picture }, zxingCodes),
    ),
  )
    .jpeg({ quality: 90 })
    .toBuffer();
