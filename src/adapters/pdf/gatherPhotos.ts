import type { Paper, PaperPart } from '../../papers/paper.ts';
import type { Photos } from '../../ports/photos.ts';

/** Where the typesetter finds a photograph, and its shape; photographs the store has lost are not in it. */
export interface GatheredPhotos {
  readonly index: Readonly<
    Record<string, { readonly path: string; readonly widthPx: number; readonly heightPx: number }>
  >;
  readonly files: readonly { readonly path: string; readonly bytes: Uint8Array }[];
}

const endings: Readonly<Record<string, string>> = {
  'image/jpeg': 'jpg',
  'image/png': 'png',
  'image/webp': 'webp',
};

const shownIn = (part: PaperPart): readonly string[] => {
  if (part.kind === 'picture') return [part.photo];
  if (part.kind === 'pictures') return part.pictures.map((picture) => picture.photo);
  return [];
};

/** Reads the photographs a paper shows, each once, in the form meant for showing. */
export async function gatherPhotos(paper: Paper, photos: Photos): Promise<GatheredPhotos> {
  const names = [...new Set(paper.parts.flatMap(shownIn))];
  const found = await Promise.all(
    names.map(async (photo) => {
      const [described, shown] = await Promise.all([photos.describe(photo), photos.read(photo, 'shown')]);
      const ending = shown === null ? undefined : endings[shown.mediaType];
      if (described === null || shown === null || ending === undefined) return [];
      const { widthPx, heightPx } = described;
      return [{ photo, path: `/photo/${photo}.${ending}`, widthPx, heightPx, bytes: shown.bytes }];
    }),
  );
  const files = found.flat();
  return {
    index: Object.fromEntries(
      files.map(({ photo, path, widthPx, heightPx }) => [photo, { path, widthPx, heightPx }]),
    ),
    files: files.map(({ path, bytes }) => ({ path, bytes })),
  };
}
