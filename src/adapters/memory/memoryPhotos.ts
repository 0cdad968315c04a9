import type { PhotoProblem } from '../../dossier/photoProblem.ts';
import type { Photo, PhotoForm, Photos } from '../../ports/photos.ts';
import { done, type Result } from '../../units/index.ts';
import { type ExaminedPhoto, examinePhoto, shownType } from '../images/examinePhoto.ts';

/** Photographs in memory: for tests and the demonstration. */
export class MemoryPhotos implements Photos {
  readonly #kept = new Map<string, ExaminedPhoto & { readonly original: Uint8Array }>();

  async keep(bytes: Uint8Array, claimedType: string): Promise<Result<Photo, PhotoProblem>> {
    const examined = await examinePhoto(bytes, claimedType);
    if (!examined.ok) return examined;
    const { photo } = examined.value;
    this.#kept.set(photo.photo, { ...examined.value, original: Uint8Array.from(bytes) });
    return done(photo);
  }

  async read(
    photo: string,
    form: PhotoForm,
  ): Promise<{ readonly bytes: Uint8Array; readonly mediaType: string } | null> {
    const kept = this.#kept.get(photo);
    if (kept === undefined) return null;
    return { bytes: kept[form], mediaType: form === 'original' ? kept.photo.mediaType : shownType };
  }

  async describe(photo: string): Promise<Photo | null> {
    return this.#kept.get(photo)?.photo ?? null;
  }
}
