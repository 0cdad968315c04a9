import { momentWords } from './measureWords.ts';
import type { PaperPart } from './paper.ts';
import type { PaperContext } from './paperContext.ts';
import { text } from './parts.ts';
import { dataErased } from './visitWords.ts';

/**
 * A client's signature as it was taken; a line to sign on where there is none yet; and where the client's
 * data were erased, words that say so.
 *
 * @param signature - id of the signature in the client's own stream
 * @param statement - what is signed, printed above an empty line
 */
export function signed(
  { client, timeZone }: Pick<PaperContext, 'client' | 'timeZone'>,
  signature: string | undefined,
  statement: string,
): PaperPart {
  if (signature === undefined) return { kind: 'signature', statement, name: '', at: '', strokes: [] };
  if (client?.kind === 'erased')
    return text(`${statement}\nA signature was taken (${signature}): ${dataErased}.`, 'soft');
  const taken = client?.signatures[signature];
  if (taken === undefined)
    return text(
      `${statement}\nA signature is on record (${signature}), but not printed on this paper.`,
      'soft',
    );
  return {
    kind: 'signature',
    statement: taken.statement,
    name: taken.name,
    at: momentWords(taken.when, timeZone),
    strokes: taken.strokes.map((stroke) => stroke.map(([across = 0, down = 0]) => [across, down] as const)),
  };
}
