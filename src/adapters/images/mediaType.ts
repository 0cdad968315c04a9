import type { Photo } from '../../ports/photos.ts';

const startsWith = (bytes: Uint8Array, at: number, text: string): boolean =>
  [...text].every((letter, index) => bytes[at + index] === letter.charCodeAt(0));

/** Brands of the HEIF container whose pictures are coded with HEVC (ISO/IEC 23008-12, annex B). */
const heicBrands = ['heic', 'heix', 'heim', 'heis', 'hevc', 'hevx'];

/** Whether a file of the HEIF container says that it holds an HEVC picture, as its own or a compatible brand. */
function isHeic(bytes: Uint8Array): boolean {
  if (!startsWith(bytes, 4, 'ftyp')) return false;
  const boxBytes = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength).getUint32(0);
  const end = Math.min(boxBytes, bytes.length, 256);
  for (let at = 8; at + 4 <= end; at += 4) {
    if (heicBrands.some((brand) => startsWith(bytes, at, brand))) return true;
  }
  return false;
}

/** What a file is by its first bytes; for what is no accepted picture, a word a person can use. */
export function foundType(
  bytes: Uint8Array,
): { readonly accepted: Photo['mediaType'] } | { readonly other: string } {
  if (bytes.length === 0) return { other: 'an empty file' };
  if (startsWith(bytes, 0, '\xff\xd8\xff')) return { accepted: 'image/jpeg' };
  if (startsWith(bytes, 0, '\x89PNG\r\n\x1a\n')) return { accepted: 'image/png' };
  if (startsWith(bytes, 0, 'RIFF') && startsWith(bytes, 8, 'WEBP')) return { accepted: 'image/webp' };
  if (isHeic(bytes)) return { accepted: 'image/heic' };
  if (startsWith(bytes, 4, 'ftypavi')) return { other: 'an AVIF picture' };
  if (startsWith(bytes, 4, 'ftyp')) return { other: 'a film or another kind of media file' };
  if (startsWith(bytes, 0, 'GIF8')) return { other: 'a GIF picture' };
  if (startsWith(bytes, 0, 'II*\0') || startsWith(bytes, 0, 'MM\0*'))
    return { other: 'a TIFF or raw picture' };
  if (startsWith(bytes, 0, '%PDF')) return { other: 'a PDF document' };
  if (startsWith(bytes, 0, 'PK')) return { other: 'a ZIP archive or an office document' };
  if (startsWith(bytes, 0, '<')) return { other: 'a web page or a drawing as text' };
  return { other: 'a file of unknown kind' };
}

const otherNames: Readonly<Record<string, Photo['mediaType']>> = {
  'image/jpg': 'image/jpeg',
  'image/pjpeg': 'image/jpeg',
  'image/heif': 'image/heic',
};

/** Whether a claimed type names what was found. Browsers that do not know a type claim nothing. */
export function claims(claimed: string, found: Photo['mediaType']): boolean {
  const plain = claimed.split(';')[0]?.trim().toLowerCase() ?? '';
  return plain === '' || plain === 'application/octet-stream' || (otherNames[plain] ?? plain) === found;
}
