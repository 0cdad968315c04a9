import { randomUUID } from 'node:crypto';
import { mkdir, open, readdir, readFile, rename, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import type { PhotoProblem } from '../../dossier/photoProblem.ts';
import type { RecordUnavailable } from '../../dossier/recordProblem.ts';
import type { Photo, PhotoArchive, PhotoForm } from '../../ports/photos.ts';
import { done, type Result } from '../../units/index.ts';
import { type ExaminedPhoto, examinePhoto, hashOf, shownType } from '../images/examinePhoto.ts';
import { claims } from '../images/mediaType.ts';
import { makeFolder, removeOlder } from './folder.ts';
import { unavailable } from './unavailable.ts';

/** What is still on its way after a day was left by a process that died; younger files may be another's. */
const dayMs = 24 * 60 * 60 * 1000;
const isName = (photo: string): boolean => /^[0-9a-f]{64}$/.test(photo);

/**
 * Photographs in a folder: `ab/abcd…` is an original under the hash of its bytes, with its description and the
 * forms made from it beside it. A file stands under its name only when it is whole and on disk; the original
 * comes last, so that where it stands the others do too, unless someone removed them: then they are made again.
 */
export class DiskPhotos implements PhotoArchive {
  readonly #folder: string;
  readonly #incoming: string;

  constructor(folder: string) {
    this.#folder = folder;
    this.#incoming = join(folder, 'incoming');
    makeFolder(this.#incoming);
    removeOlder(this.#incoming, Date.now() - dayMs);
  }

  async keep(
    bytes: Uint8Array,
    claimedType: string,
  ): Promise<Result<Photo, PhotoProblem | RecordUnavailable>> {
    const name = hashOf(bytes);
    const known = await this.describe(name);
    if (known !== null && claims(claimedType, known.mediaType)) return done(known);
    const examined = await examinePhoto(bytes, claimedType);
    if (!examined.ok) return examined;
    try {
      await this.#writeForms(examined.value);
      await this.#write(name, '', bytes);
      return done(examined.value.photo);
    } catch (error) {
      const problem = unavailable(error);
      if (problem === null) throw error;
      return { ok: false, problem };
    }
  }

  async read(
    photo: string,
    form: PhotoForm,
  ): Promise<{ readonly bytes: Uint8Array; readonly mediaType: string } | null> {
    const described = await this.describe(photo);
    if (described === null) return null;
    if (form === 'original') {
      const bytes = await readIfThere(this.#path(photo, ''));
      return bytes === null ? null : { bytes, mediaType: described.mediaType };
    }
    const kept = await readIfThere(this.#path(photo, `.${form}.jpg`));
    const bytes = kept ?? (await this.#makeAgain(photo))?.[form] ?? null;
    return bytes === null ? null : { bytes, mediaType: shownType };
  }

  async describe(photo: string): Promise<Photo | null> {
    if (!isName(photo) || !(await isThere(this.#path(photo, '')))) return null;
    const kept = await readIfThere(this.#path(photo, '.json'));
    if (kept !== null) return JSON.parse(new TextDecoder().decode(kept)) as Photo;
    return (await this.#makeAgain(photo))?.photo ?? null;
  }

  async verify(): Promise<{ readonly photos: number; readonly broken: readonly string[] }> {
    const broken: string[] = [];
    let photos = 0;
    for (const beginning of await readdir(this.#folder)) {
      if (!/^[0-9a-f]{2}$/.test(beginning)) continue;
      for (const photo of (await readdir(join(this.#folder, beginning))).filter(isName)) {
        photos += 1;
        if (hashOf(await readFile(this.#path(photo, ''))) !== photo) broken.push(photo);
      }
    }
    return { photos, broken };
  }

  async #makeAgain(photo: string): Promise<ExaminedPhoto | null> {
    const original = await readIfThere(this.#path(photo, ''));
    const examined = original === null ? null : await examinePhoto(original, '');
    if (examined === null || !examined.ok) return null;
    await this.#writeForms(examined.value);
    return examined.value;
  }

  async #writeForms({ photo, shown, thumbnail }: ExaminedPhoto): Promise<void> {
    await this.#write(photo.photo, '.shown.jpg', shown);
    await this.#write(photo.photo, '.thumbnail.jpg', thumbnail);
    await this.#write(photo.photo, '.json', new TextEncoder().encode(JSON.stringify(photo)));
  }

  /** Writes a file whole under another name, syncs it, renames it, syncs the folder that holds the name. */
  async #write(photo: string, ending: string, bytes: Uint8Array): Promise<void> {
    const folder = join(this.#folder, photo.slice(0, 2));
    await mkdir(folder, { mode: 0o700 }).catch(unlessCode('EEXIST'));
    await syncNames(this.#folder);
    const onItsWay = join(this.#incoming, randomUUID());
    try {
      const file = await open(onItsWay, 'wx', 0o600);
      try {
        await file.writeFile(bytes);
        await file.sync();
      } finally {
        await file.close();
      }
      await rename(onItsWay, this.#path(photo, ending));
    } catch (error) {
      await rm(onItsWay, { force: true });
      throw error;
    }
    await syncNames(folder);
  }

  #path(photo: string, ending: string): string {
    return join(this.#folder, photo.slice(0, 2), `${photo}${ending}`);
  }
}

async function syncNames(folder: string): Promise<void> {
  const names = await open(folder, 'r');
  try {
    await names.sync();
  } finally {
    await names.close();
  }
}

const isThere = (path: string): Promise<boolean> =>
  stat(path).then(
    () => true,
    () => false,
  );

/** The bytes of a file, null when there is none. */
const readIfThere = (path: string): Promise<Uint8Array | null> => readFile(path).catch(unlessCode('ENOENT'));

/** Lets one kind of trouble with files pass as null; any other is thrown. */
const unlessCode =
  (code: string) =>
  (error: NodeJS.ErrnoException): null => {
    if (error.code === code) return null;
    throw error;
  };
