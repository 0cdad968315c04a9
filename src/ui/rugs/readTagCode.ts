interface FoundCode {
  readonly rawValue: string;
}

interface CodeReader {
  detect(picture: ImageBitmap): Promise<readonly FoundCode[]>;
}

type CodeReaderMaker = new (options: { readonly formats: readonly string[] }) => CodeReader;

const maker = (): CodeReaderMaker | null =>
  (globalThis as { readonly BarcodeDetector?: CodeReaderMaker }).BarcodeDetector ?? null;

/** Whether this browser can read a code in a photograph; many can only on a secure address. */
export const canReadCodes = (): boolean => maker() !== null;

/** Where a tag's code leads: to a dossier by its id, or to whatever rug carries that tag now. */
export type TagCode =
  | { readonly kind: 'rug'; readonly rug: string }
  | { readonly kind: 'tag'; readonly tag: string };

/** Reads the text of a tag's code. Null when it is no code of ours. */
export function tagCodeOf(text: string): TagCode | null {
  const rug = /\/rugs\/([0-9A-Za-z][0-9A-Za-z_-]{0,63})\/?$/.exec(text)?.[1];
  if (rug !== undefined) return { kind: 'rug', rug };
  const tag = /^(?:.*[?&]tag=)?([0-9A-Za-z-]{1,12})$/.exec(text.trim())?.[1];
  return tag === undefined ? null : { kind: 'tag', tag };
}

/** The text of the first code in a photograph, or null when none can be read. */
export async function codeTextIn(photograph: Blob): Promise<string | null> {
  const Reader = maker();
  if (Reader === null) return null;
  const picture = await createImageBitmap(photograph);
  try {
    const found = await new Reader({ formats: ['qr_code'] }).detect(picture);
    return found[0]?.rawValue ?? null;
  } finally {
    picture.close();
  }
}
