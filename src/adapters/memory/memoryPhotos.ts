import type { PhotoProblem } from '../../dossier/photoProblem.ts';
import type { Photo, PhotoArchive, PhotoForm } from '../../ports/photos.ts';
import { done, type Result } from '../../units/index.ts';
import { type ExaminedPhoto, examinePhoto, hashOf, shownType } from '../images/examinePhoto.ts';

/** Photographs in memory: for tests and the demonstration. */
export class MemoryPhotos implements PhotoArchive {
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

  async verify(): Promise<{ readonly photos: number; readonly broken: readonly string[] }> {
    const broken = [...this.#kept].filter(([photo, { original }]) => hashOf(original) !== photo);
    return { photos: this.#kept.size, broken: broken.map(([photo]) => photo) };
  }

  async describe(photo: string): Promise<Photo | null> {
    return this.#kept.get(photo)?.photo ?? null;
  }
}
