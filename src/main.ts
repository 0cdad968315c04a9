import { readFile, writeFile } from 'node:fs/promises';
import type { Terminal } from './cli/command.ts';
import { convertCommand } from './cli/convert.ts';
import { runCli } from './cli/runCli.ts';

const terminal: Terminal = {
  print: (text) => void process.stdout.write(`${text}\n`),
  complain: (text) => void process.stderr.write(`${text}\n`),
  readBytes: (path) => readFile(path),
  writeBytes: (path, bytes) => writeFile(path, bytes),
};

process.exitCode = await runCli([convertCommand], process.argv.slice(2), terminal);
