import type { Command } from '../../src/cli/command.ts';
import { runCli } from '../../src/cli/runCli.ts';

/** Runs a command on files that are held in memory, and answers what it said and wrote. */
export async function runOn(
  files: Readonly<Record<string, Uint8Array>>,
  command: Command,
  ...args: readonly string[]
) {
  const said: string[] = [];
  const complained: string[] = [];
  const written = new Map<string, Uint8Array>();
  const code = await runCli([command], args, {
    print: (text) => said.push(text),
    complain: (text) => complained.push(text),
    readBytes: async (path) => {
      const bytes = files[path];
      if (bytes === undefined) throw new Error(`no file ${path}`);
      return bytes;
    },
    writeBytes: async (path, bytes) => {
      written.set(path, bytes);
    },
  });
  return { code, said: said.join('\n'), complained: complained.join('\n'), written };
}
