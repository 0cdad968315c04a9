import { fromBuffer } from 'yauzl';

/** All files of a ZIP archive by name. */
export const unzip = (bytes: Uint8Array): Promise<ReadonlyMap<string, Uint8Array>> =>
  new Promise((answer, fail) => {
    const files = new Map<string, Uint8Array>();
    fromBuffer(Buffer.from(bytes), { lazyEntries: true }, (error, archive) => {
      if (error !== null) return fail(error);
      archive.on('error', fail);
      archive.on('end', () => answer(files));
      archive.on('entry', (entry) => {
        archive.openReadStream(entry, (broken, stream) => {
          if (broken !== null) return fail(broken);
          const parts: Uint8Array[] = [];
          stream.on('data', (part: Uint8Array) => parts.push(part));
          stream.on('error', fail);
          stream.on('end', () => {
            files.set(entry.fileName, Buffer.concat(parts));
            archive.readEntry();
          });
        });
      });
      archive.readEntry();
    });
  });
