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

/** Reads a JSON file, or says that it is none. */
export async function readJson(path: string, terminal: Terminal): Promise<unknown> {
  let text: string;
  try {
    text = new TextDecoder().decode(await terminal.readBytes(path));
  } catch {
    throw new WrongCall(`The file ${path} cannot be read.`);
  }
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new WrongCall(
      `The file ${path} is not JSON: ${error instanceof Error ? error.message : String(error)}.`,
    );
  }
}

/** Turns a problem into its three sentences; made from the tables of `text/`. */
export type Say = (problem: Problem) => {
  readonly happened: string;
  readonly matters: string;
  readonly now: string;
};

/** Prints a refusal: with `--json` as `{"refused":{code, happened, matters, now, facts}}` on stdout, else as sentences on stderr. */
export function printRefusal(problem: Problem, say: Say, json: boolean, terminal: Terminal): 1 {
  const { happened, matters, now } = say(problem);
  if (json) {
    terminal.print(
      JSON.stringify({ refused: { code: problem.code, happened, matters, now, facts: problem.facts } }),
    );
  } else {
    terminal.complain(`${happened}\n${matters}\n${now}`);
  }
  return 1;
}
