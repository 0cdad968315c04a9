import { problemWords } from '../text/problemWords.ts';
import type { Problem } from '../units/index.ts';

/** What a command may touch of the machine; `main.ts` gives the real one, tests give their own. */
export interface Terminal {
  readonly print: (text: string) => void;
  readonly complain: (text: string) => void;
  readonly readBytes: (path: string) => Promise<Uint8Array>;
  readonly writeBytes: (path: string, bytes: Uint8Array) => Promise<void>;
}

/** Exit codes: 0 done, 1 refused, 2 wrong call, 70 bug. */
export type ExitCode = 0 | 1 | 2 | 70;

export interface Command {
  readonly name: string;
  /** One line in the list of commands. */
  readonly summary: string;
  /** The whole of `--help`. */
  readonly help: string;
  readonly run: (args: readonly string[], terminal: Terminal) => Promise<ExitCode>;
}

/** A call that does not fit the command's form: printed with a pointer to `--help`, exit 2. */
export class WrongCall extends Error {}

/**
 * Prints a refusal: with `--json` as `{"refused":{code, happened, matters, now, facts}}` on stdout, else as
 * sentences on stderr. Where one of several files is at fault, `file` names it.
 */
export function printRefusal(problem: Problem, json: boolean, terminal: Terminal, file?: string): 1 {
  const { code, facts } = problem;
  const { happened, matters, now } = problemWords(problem);
  if (json)
    terminal.print(
      JSON.stringify({
        refused: { code, ...(file === undefined ? {} : { file }), happened, matters, now, facts },
      }),
    );
  else terminal.complain(`${file === undefined ? '' : `${file}: `}${happened}\n${matters}\n${now}`);
  return 1;
}
