import type { Paper } from '../../papers/paper.ts';
import type { PaperNotPrinted } from '../../papers/paperProblem.ts';
import type { Photos } from '../../ports/photos.ts';
import type { Printer } from '../../ports/printer.ts';
import { done, type Result, refused } from '../../units/index.ts';
import { gatherPhotos } from './gatherPhotos.ts';
import { layOut } from './layOut.ts';
import template from './paper.typ?raw';
import { takeTurns } from './takeTurns.ts';
import { typeset } from './typeset.ts';

/** Letters that turn the direction of what follows: typed into a name they could make a paper read otherwise. */
const directionOverrides = /[\u202a-\u202e]/g;
const numbered = (letter: string): string => `[U+${letter.charCodeAt(0).toString(16).toUpperCase()}]`;

export interface PrinterSettings {
  /** Longest a paper may take before its process is stopped. */
  readonly patienceMs?: number;
  /** Papers typeset side by side; the rest wait, so that many tablets asking at once cannot fill the memory. */
  readonly sideBySide?: number;
  /** Told what each printed paper took: time and the most memory its process held. */
  readonly onPrinted?: (taken: { readonly milliseconds: number; readonly peakKiB: number }) => void;
}

/**
 * Typesets papers as tagged PDF, each in a process of its own: a paper that hangs or falls over takes
 * nothing with it, and its memory is given back when it ends.
 */
export function makePrinter(photos: Photos, settings: PrinterSettings = {}): Printer {
  const { patienceMs = 60_000, sideBySide = 2, onPrinted } = settings;
  const inTurn = takeTurns(sideBySide);
  const print = async (paper: Paper): Promise<Result<Uint8Array, PaperNotPrinted>> => {
    const begun = performance.now();
    const pictures = await gatherPhotos(paper, photos);
    const outcome = await typeset({
      template,
      data: JSON.stringify(layOut(paper, pictures)).replace(directionOverrides, numbered),
      photos: pictures.files,
      createdAtSeconds: Math.floor(Date.parse(paper.issuedAt) / 1000),
      patienceMs,
    });
    if (!outcome.ok) {
      const { cause, reason } = outcome;
      return refused('paper-not-printed', { title: paper.title, cause, reason });
    }
    onPrinted?.({ milliseconds: performance.now() - begun, peakKiB: outcome.peakKiB });
    return done(outcome.bytes);
  };
  return { print: (paper) => inTurn(() => print(paper)) };
}
