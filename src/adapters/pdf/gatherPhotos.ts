import sharp from 'sharp';
import type { Paper, PaperPart } from '../../papers/paper.ts';
import type { Photos } from '../../ports/photos.ts';
import { takeTurns } from './takeTurns.ts';

/** Where the typesetter finds a photograph, and its shape; photographs the store has lost are not in it. */
export interface GatheredPhotos {
  readonly index: Readonly<
    Record<string, { readonly path: string; readonly widthPx: number; readonly heightPx: number }>
  >;
  readonly files: readonly { readonly path: string; readonly bytes: Uint8Array }[];
}

/** Longest side that print needs: about 250 dots to the inch across the writing, a half, or a third of it. */
const longestPx = { 1: 1700, 2: 1000, 3: 700 } as const;

const shownIn = (part: PaperPart): readonly (readonly [photo: string, px: number])[] => {
  if (part.kind === 'picture') return [[part.photo, longestPx[1]]];
  if (part.kind === 'pictures') return part.pictures.map(({ photo }) => [photo, longestPx[part.across]]);
  return [];
};

/** Every photograph once, as large as its largest place on the paper asks. */
const wantedIn = (paper: Paper): ReadonlyMap<string, number> => {
  const wanted = new Map<string, number>();
  for (const [photo, px] of paper.parts.flatMap(shownIn))
    wanted.set(photo, Math.max(px, wanted.get(photo) ?? 0));
  return wanted;
};

/**
 * Reads the photographs a paper shows, in the form meant for showing, and scales them to what print can use:
 * the typesetter holds every picture unpacked, and a dossier may have dozens.
 */
export async function gatherPhotos(paper: Paper, photos: Photos): Promise<GatheredPhotos> {
  const inTurn = takeTurns(2);
  const scaled = async (photo: string, px: number) => {
    const shown = await photos.read(photo, 'shown');
    if (shown === null) return [];
    try {
      const { data, info } = await sharp(shown.bytes, { failOn: 'error' })
        .resize(px, px, { fit: 'inside', withoutEnlargement: true })
        .flatten({ background: '#fff' })
        .jpeg({ quality: 86 })
        .toBuffer({ resolveWithObject: true });
      return [
        { photo, path: `/photo/${photo}.jpg`, widthPx: info.width, heightPx: info.height, bytes: data },
      ];
    } catch {
      // Bytes that are no picture any more are as good as lost; the paper says so in the picture's place.
      return [];
    }
  };
  const found = await Promise.all([...wantedIn(paper)].map(([photo, px]) => inTurn(() => scaled(photo, px))));
  const files = found.flat();
  return {
    index: Object.fromEntries(
      files.map(({ photo, path, widthPx, heightPx }) => [photo, { path, widthPx, heightPx }]),
    ),
    files: files.map(({ path, bytes }) => ({ path, bytes })),
  };
}
