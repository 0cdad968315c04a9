import sharp from 'sharp';
import { expect } from 'vitest';
import { zxingCodes } from '../../src/adapters/codes/zxingCodes.ts';
import { sharpPictures } from '../../src/adapters/images/sharpPictures.ts';
import { cardCommand } from '../../src/cli/card.ts';
import { runCli } from '../../src/cli/runCli.ts';
import { weaveCommand } from '../../src/cli/weave.ts';

interface Said {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** The commands `weave` and `card` over files held in memory. */
export function weaveDesk(): {
  readonly files: Map<string, Uint8Array>;
  readonly call: (...args: string[]) => Promise<Said>;
  /** What `weave` answers in JSON. */
  readonly weave: (...args: string[]) => Promise<{ code: number; answer: ReturnType<typeof JSON.parse> }>;
  /** A refusal of `weave`, told in three sentences. */
  readonly refusal: (...args: string[]) => Promise<{ readonly code: string; readonly happened: string }>;
} {
  const files = new Map<string, Uint8Array>();
  const call = async (...args: string[]): Promise<Said> => {
    const out: string[] = [];
    const err: string[] = [];
    const code = await runCli(
      [weaveCommand(sharpPictures, zxingCodes), cardCommand(sharpPictures, zxingCodes)],
      args,
      {
        print: (text) => out.push(text),
        complain: (text) => err.push(text),
        readBytes: async (path) => files.get(path) ?? Promise.reject(new Error('no such file')),
        writeBytes: async (path, bytes) => void files.set(path, bytes),
      },
    );
    return { code, out: out.join('\n'), err: err.join('\n') };
  };
  const weave = async (...args: string[]) => {
    const { code, out } = await call('weave', ...args, '--json');
    return { code, answer: JSON.parse(out) };
  };
  const refusal = async (...args: string[]) => {
    const { code, answer } = await weave(...args);
    expect(code).toBe(1);
    for (const part of ['happened', 'matters', 'now'])
      expect(answer.refused[part].length).toBeGreaterThan(20);
    return answer.refused;
  };
  return { files, call, weave, refusal };
}

/** A rendered picture as the file a telephone would make of it. */
export const jpegOf = (
  picture: { readonly width: number; readonly height: number; readonly rgb: Uint8Array },
  quality = 88,
): Promise<Buffer> =>
  sharp(picture.rgb, { raw: { width: picture.width, height: picture.height, channels: 3 } })
    .jpeg({ quality })
    .toBuffer();
