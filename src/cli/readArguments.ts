import type { Area } from '../core/colour/index.ts';
import { type Terminal, WrongCall } from './command.ts';

/** Reads a file named on the command line. */
export async function readFile(path: string, terminal: Terminal): Promise<Uint8Array> {
  try {
    return await terminal.readBytes(path);
  } catch {
    throw new WrongCall(`The file ${path} cannot be read.`);
  }
}

/** Reads a JSON file, or says that it is none. */
export async function readJson(path: string, terminal: Terminal): Promise<unknown> {
  const text = new TextDecoder().decode(await readFile(path, terminal));
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new WrongCall(
      `The file ${path} is not JSON: ${error instanceof Error ? error.message : String(error)}.`,
    );
  }
}

/** The one word a command takes beside its options; `ask` says what to give. */
export function theOnly(positionals: readonly string[], ask: string): string {
  const [only, ...more] = positionals;
  if (only === undefined || more.length > 0) throw new WrongCall(ask);
  return only;
}

/** A number, where the option was given. */
export function readNumber(text: string | undefined, option: string): number | undefined {
  return text === undefined ? undefined : readNumbers(text, 1, option)[0];
}

/** So many numbers with commas between, as an option gives them. */
export function readNumbers(text: string, count: number, option: string): readonly number[] {
  const read = text.split(',').map((part) => (part.trim() === '' ? Number.NaN : Number(part)));
  if (read.length !== count || !read.every(Number.isFinite))
    throw new WrongCall(
      `${option} is “${text}”; it takes ${count === 1 ? 'a number' : `${count} numbers with commas between`}.`,
    );
  return read;
}

/** Part of a picture [px], as an option gives it. */
export function readArea(text: string, option: string): Area {
  const [x = 0, y = 0, width = 0, height = 0] = readNumbers(text, 4, option);
  return { x, y, width, height };
}
