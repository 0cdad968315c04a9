import type { Paper, PaperPart, PaperPicture } from '../../papers/paper.ts';
import { type PlacedMark, placeLabels } from '../../papers/placeLabels.ts';
import type { GatheredPhotos } from './gatherPhotos.ts';

/** Width of the writing on each size of paper, between the margins set in paper.typ. */
const writingWidthMm = { a4: 210 - 42, letter: 215.9 - 42 } as const;
const gapMm = 4;

/** A picture with its printed size; without a path its bytes are lost and a box says so. */
interface LaidPicture {
  readonly caption: string;
  readonly path: string | null;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly marks: readonly PlacedMark[];
}

const sized = (
  picture: Omit<PaperPicture, 'kind'>,
  photos: GatheredPhotos,
  widestMm: number,
  highestMm: number,
): LaidPicture => {
  const file = photos.index[picture.photo];
  if (file === undefined)
    return { caption: picture.caption, path: null, widthMm: widestMm, heightMm: 20, marks: [] };
  const scale = Math.min(widestMm / file.widthPx, highestMm / file.heightPx);
  const [widthMm, heightMm] = [file.widthPx * scale, file.heightPx * scale];
  const marks = placeLabels(picture.marks ?? [], widthMm, heightMm);
  return { caption: picture.caption, path: file.path, widthMm, heightMm, marks };
};

const layOutPart = (part: PaperPart, photos: GatheredPhotos, widthMm: number) => {
  if (part.kind === 'picture') return { kind: part.kind, ...sized(part, photos, widthMm, 150) };
  if (part.kind !== 'pictures') return part;
  const eachMm = (widthMm - gapMm * (part.across - 1)) / part.across;
  const rows = Array.from({ length: Math.ceil(part.pictures.length / part.across) }, (_, row) =>
    part.pictures
      .slice(row * part.across, (row + 1) * part.across)
      .map((picture) => sized(picture, photos, eachMm, 92)),
  );
  return { kind: part.kind, eachMm, gapMm, rows };
};

/** The paper as the template reads it: pictures with their files, printed sizes and placed numbers. */
export const layOut = (paper: Paper, photos: GatheredPhotos) => ({
  ...paper,
  parts: paper.parts.map((part) => layOutPart(part, photos, writingWidthMm[paper.size])),
});
