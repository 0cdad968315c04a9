import type { Problem } from '../units/index.ts';
import { accessWords } from './accessWords.ts';
import { blockedWords } from './blockedWords.ts';
import { cardWords } from './cardWords.ts';
import { chemistryWords } from './chemistryWords.ts';
import { colourWords } from './colourWords.ts';
import { conditionProblemWords } from './conditionWords.ts';
import { dossierWords } from './dossierWords.ts';
import { dryingWords } from './dryingWords.ts';
import { floorWords } from './floorWords.ts';
import { httpWords } from './httpWords.ts';
import { ledgerWords } from './ledgerWords.ts';
import { loggerWords } from './loggerWords.ts';
import { paperWords } from './paperWords.ts';
import { photoWords } from './photoWords.ts';
import { quantityWords } from './quantityWords.ts';
import { roomWords } from './roomWords.ts';
import { shelfWords } from './shelfWords.ts';
import { washWords } from './washWords.ts';
import { weaveWords } from './weaveWords.ts';
import type { Words } from './words.ts';
import { workWords } from './workWords.ts';

/** Every problem code with its words; each subject's table is joined here. */
const tables = {
  ...accessWords,
  ...blockedWords,
  ...cardWords,
  ...chemistryWords,
  ...colourWords,
  ...conditionProblemWords,
  ...dossierWords,
  ...dryingWords,
  ...floorWords,
  ...httpWords,
  ...ledgerWords,
  ...loggerWords,
  ...paperWords,
  ...photoWords,
  ...quantityWords,
  ...roomWords,
  ...shelfWords,
  ...washWords,
  ...weaveWords,
  ...workWords,
};

/** All permanent problem codes. */
export const problemCodes = Object.keys(tables).sort();

/**
 * The three sentences a person reads for a problem.
 *
 * @param problem - any problem of any subject
 * @returns what happened, why it matters, what to do now
 * @source none: wording of this project
 */
export function problemWords(problem: Problem): Words {
  const words = (tables as Readonly<Record<string, (facts: never) => Words>>)[problem.code];
  if (words === undefined) throw new Error(`no words for the problem ${problem.code}`);
  return words(problem.facts as never);
}
