import { type Command, type ExitCode, type Terminal, WrongCall } from './command.ts';

/** Picks the command, answers `--help`, and turns wrong calls and bugs into their exit codes. */
export async function runCli(
  commands: readonly Command[],
  args: readonly string[],
  terminal: Terminal,
): Promise<ExitCode> {
  const [name, ...rest] = args;
  if (name === undefined || name === '--help' || name === 'help') {
    const width = Math.max(...commands.map((command) => command.name.length));
    terminal.print(
      [
        'wefthouse COMMAND [options]',
        '',
        ...commands.map((command) => `  ${command.name.padEnd(width)}  ${command.summary}`),
        '',
        'wefthouse COMMAND --help says more.',
      ].join('\n'),
    );
    return name === undefined ? 2 : 0;
  }
  const command = commands.find((candidate) => candidate.name === name);
  if (command === undefined) {
    terminal.complain(`There is no command ${name}. wefthouse --help lists them.`);
    return 2;
  }
  if (rest.includes('--help')) {
    terminal.print(command.help);
    return 0;
  }
  try {
    return await command.run(rest, terminal);
  } catch (error) {
    if (error instanceof WrongCall || (error instanceof TypeError && 'code' in error)) {
      terminal.complain(`${error.message}\nwefthouse ${name} --help shows the form.`);
      return 2;
    }
    terminal.complain(error instanceof Error ? (error.stack ?? error.message) : String(error));
    return 70;
  }
}
