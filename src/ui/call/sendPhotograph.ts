import type { PhotographAnswer } from '../../contract/index.ts';
import type { Answered } from './call.ts';
import { notReached, notReadable, problemIn } from './shownProblem.ts';
import { signInDesk } from './signInDesk.ts';

/** A photograph the server keeps, by the hash of its bytes. */
export type SentPhotograph = PhotographAnswer;

const once = (file: Blob, onProgress: (done: number) => void): Promise<Answered<SentPhotograph>> =>
  new Promise((resolve) => {
    // fetch cannot tell how much has gone out; over a slow network a person wants to see it move.
    const request = new XMLHttpRequest();
    request.open('POST', '/api/photographs');
    request.setRequestHeader('content-type', file.type || 'application/octet-stream');
    request.responseType = 'text';
    request.upload.onprogress = ({ loaded, total }) => onProgress(total > 0 ? loaded / total : 0);
    request.onerror = () => resolve({ ok: false, problem: notReached() });
    request.onload = () => {
      const { status, responseText } = request;
      try {
        const answer: unknown = JSON.parse(responseText);
        resolve(
          status < 300
            ? { ok: true, value: answer as SentPhotograph }
            : { ok: false, problem: problemIn(status, answer) },
        );
      } catch {
        resolve({ ok: false, problem: notReadable(status) });
      }
    };
    request.send(file);
  });

/** Sends a picture's bytes as they are; the same bytes twice are one photograph. */
export async function sendPhotograph(
  file: Blob,
  onProgress: (done: number) => void,
): Promise<Answered<SentPhotograph>> {
  const first = await once(file, onProgress);
  if (first.ok || first.problem.code !== 'signed-out') return first;
  return (await signInDesk.ask('ended')) ? once(file, onProgress) : first;
}
