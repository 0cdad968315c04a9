import { parseArgs } from 'node:util';
import { type Area, type BlotReading, readBlot } from '../core/colour/index.ts';
import type { Pictures } from '../ports/pictures.ts';
import { blotLabel, blotNoteWords } from '../text/colourWords.ts';
import { problemWords } from '../text/problemWords.ts';
import { type Command, printRefusal, WrongCall } from './command.ts';

const help = `wefthouse blot PICTURE --control X,Y,W,H --sample X,Y,W,H [--white X,Y,W,H]... [--json]

Grades how much dye a white cloth took up, from one photograph that shows clean and stained cloth.

  wefthouse blot blot.png --control 40,60,120,120 --sample 240,60,120,120 --white 20,10,60,30

--control  clean cloth that touched no dye, in pixels from the upper left corner
--sample   the blot, without its edge
--white    bare white paper in the same light, any number of times; three or more that are not in one line
           correct light that falls off across the picture; without any, the control is taken for the white
--json     print JSON

A blot takes minutes: it is evidence, not a verdict, and no full standard fastness test. Where grades have
probabilities, plan by the worst one above 5 %.`;

const readArea = (text: string, option: string): Area => {
  const read = text.split(',').map((part) => (part.trim() === '' ? Number.NaN : Number(part)));
  const [x = 0, y = 0, width = 0, height = 0] = read;
  if (read.length !== 4 || !read.every(Number.isFinite))
    throw new WrongCall(`${option} is “${text}”; it takes 4 numbers with commas between.`);
  return { x, y, width, height };
};

const needed = (text: string | undefined, option: string): Area => {
  if (text === undefined) throw new WrongCall(`Give ${option} X,Y,W,H.`);
  return readArea(text, option);
};

function inWords(reading: BlotReading): string {
  const [lowest, highest] = reading.gradeInterval;
  const chances = Object.entries(reading.probability)
    .map(([grade, chance]) => [grade, Math.round(100 * chance)] as const)
    .map(([grade, percent]) => `grade ${grade} ${percent < 1 ? 'below 1' : percent} %`);
  return [
    `grade ${reading.grade} (${lowest === highest ? lowest : `${lowest} to ${highest}`} at 95 %): ${blotLabel}`,
    `chances: ${chances.join(', ')}`,
    `ΔE ${reading.deltaE.toFixed(1)}, ΔE_GS ${reading.deltaEGS.toFixed(1)}, noise σ ${reading.sigma.toFixed(2)}`,
    ...reading.notes.map((note) => blotNoteWords[note]),
  ].join('\n');
}

/** `wefthouse blot`: pictures are opened by what `main.ts` gives. */
export const blotCommand = (pictures: Pictures): Command => ({
  name: 'blot',
  summary: 'grade the dye a white cloth took up, from a photograph',
  help,
  async run(args, terminal) {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        control: { type: 'string' },
        sample: { type: 'string' },
        white: { type: 'string', multiple: true, default: [] },
        json: { type: 'boolean', default: false },
      },
    });
    const [path, ...more] = positionals;
    if (path === undefined || more.length > 0) throw new WrongCall('Give one photograph.');
    const areas = {
      control: needed(values.control, '--control'),
      sample: needed(values.sample, '--sample'),
      whites: values.white.map((text) => readArea(text, '--white')),
    };
    let bytes: Uint8Array;
    try {
      bytes = await terminal.readBytes(path);
    } catch {
      throw new WrongCall(`The file ${path} cannot be read.`);
    }
    const decoded = await pictures.decode(bytes);
    if (!decoded.ok) return printRefusal(decoded.problem, problemWords, values.json, terminal);
    const reading = readBlot(decoded.value, areas);
    if (!reading.ok) return printRefusal(reading.problem, problemWords, values.json, terminal);
    const { deltaE, deltaEGS, grade, gradeInterval, probability, sigma, control, dye } = reading.value;
    const notes = [`${blotLabel}.`, ...reading.value.notes.map((note) => blotNoteWords[note])];
    terminal.print(
      values.json
        ? JSON.stringify({
            ...{ deltaE, deltaEGS, grade, gradeInterval, probability, sigma, control, dye },
            notes,
          })
        : inWords(reading.value),
    );
    return 0;
  },
});
