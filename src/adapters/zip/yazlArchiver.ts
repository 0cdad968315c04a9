import { PassThrough, Readable } from 'node:stream';
import { ZipFile } from 'yazl';
import type { ArchiveFile, Archiver } from '../../ports/archiver.ts';

const contentOf = async (file: ArchiveFile): Promise<Readable> => {
  const content = await file.open();
  return content instanceof Uint8Array ? Readable.from([Buffer.from(content)]) : Readable.from(content);
};

/** Archives as ZIP, sent while they are made. */
export const yazlArchiver: Archiver = {
  zip(files) {
    const archive = new ZipFile();
    const out = archive.outputStream.pipe(new PassThrough());
    archive.on('error', (error) => out.destroy(error instanceof Error ? error : new Error(String(error))));
    for (const file of files) {
      const options = { mtime: new Date(file.at), compress: file.press };
      archive.addReadStreamLazy(file.name, options, (take) => {
        contentOf(file).then(
          (content) => take(null, content),
          (error) => take(error, Readable.from([])),
        );
      });
    }
    archive.end();
    return out;
  },
};
