import { createPrivateKey, X509Certificate } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import type { StartProblem } from '../../text/httpWords.ts';
import { done, type Result, refused } from '../../units/index.ts';

type Identity = { readonly certificate: string; readonly key: string };

/** A certificate and key from files, once it is sure that they can be read and belong together. */
export async function givenIdentity(
  certificateFile: string,
  keyFile: string,
): Promise<Result<Identity, StartProblem>> {
  let file = certificateFile;
  try {
    const certificate = await readFile(certificateFile, 'utf8');
    const known = new X509Certificate(certificate);
    file = keyFile;
    const key = await readFile(keyFile, 'utf8');
    return known.checkPrivateKey(createPrivateKey(key))
      ? done({ certificate, key })
      : refused('certificate-unreadable', { file, reason: 'it is not the key of the certificate.' });
  } catch (error) {
    const reason = `${error instanceof Error ? error.message : String(error)}.`;
    return refused('certificate-unreadable', { file, reason });
  }
}
