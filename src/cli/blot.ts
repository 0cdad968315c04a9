import { parseArgs } from 'node:util';
import {
  type Area,
  type BlotPlaces,
  type BlotReading,
  readBlot,
  readBlotPair,
  readCardBlot,
} from '../core/colour/index.ts';
import type { Codes } from '../ports/codes.ts';
import type { Pictures, PixelImage } from '../ports/pictures.ts';
import { blotLabel, blotNoteWords } from '../text/colourWords.ts';
import type { Problem, Result } from '../units/index.ts';
import { openPicture, withCard } from './cardPhotograph.ts';
import { type Command, printRefusal, WrongCall } from './command.ts';
import { readArea } from './readArguments.ts';

const help = `wefthouse blot BEFORE AFTER [--json]
wefthouse blot PICTURE [--json]
wefthouse blot PICTURE --control X,Y,W,H --sample X,Y,W,H [--white X,Y,W,H]... [--json]

Grades how much dye a white cloth took up, from photographs with the weave card lying on the cloth.

  wefthouse blot cloth-before.jpg cloth-after.jpg
  wefthouse blot cloth-after.jpg
  wefthouse blot blot.png --control 40,60,120,120 --sample 240,60,120,120 --white 20,10,60,30

Two pictures are better than one: what the cloth had on it before the test is then no dye. Both must show the
same card. The blot is looked for in the card's window; where it is not clear, show the two places. Without a
card both places are needed.

--control  clean cloth that touched no dye, in pixels from the upper left corner of the (second) picture
--sample   the blot, without its edge
--white    without a card: bare white paper in the same light, any number of times; three or more that are
           not in one line correct light that falls off; without any, the control is taken for the white
--json     print JSON

A blot takes minutes: it is evidence, not a verdict, and no full standard fastness test. Where grades have
probabilities, plan by the worst one above 5 %.`;

const readPlaces = (control: string | undefined, sample: string | undefined): BlotPlaces | undefined => {
  if (control === undefined && sample === undefined) return undefined;
  if (control === undefined || sample === undefined)
    throw new WrongCall('Give both --control X,Y,W,H and --sample X,Y,W,H, or neither.');
  return { control: readArea(control, '--control'), sample: readArea(sample, '--sample') };
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

function asJson(reading: BlotReading): string {
  const { deltaE, deltaEGS, grade, gradeInterval, probability, sigma, control, dye } = reading;
  const notes = [`${blotLabel}.`, ...reading.notes.map((note) => blotNoteWords[note])];
  return JSON.stringify({
    ...{ deltaE, deltaEGS, grade, gradeInterval, probability, sigma, control, dye },
    notes,
  });
}

async function readOne(
  picture: PixelImage,
  places: BlotPlaces | undefined,
  whites: readonly Area[],
  codes: Codes,
): Promise<Result<BlotReading, Problem>> {
  if (whites.length > 0) {
    if (places === undefined) throw new WrongCall('With --white give --control and --sample too.');
    return readBlot(picture, { ...places, whites });
  }
  const shown = await withCard(picture, codes);
  if (shown.ok) return readCardBlot(picture, shown.value.card, places);
  return shown.problem.code === 'card-not-found' && places !== undefined
    ? readBlot(picture, { ...places, whites })
    : shown;
}

/** `wefthouse blot`: pictures are opened and codes read by what `main.ts` gives. */
export const blotCommand = (pictures: Pictures, codes: Codes): Command => ({
  name: 'blot',
  summary: 'grade the dye a white cloth took up, from photographs',
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
    const [path, second, ...more] = positionals;
    if (path === undefined || more.length > 0) throw new WrongCall('Give one photograph, or two.');
    const places = readPlaces(values.control, values.sample);
    const whites = values.white.map((text) => readArea(text, '--white'));
    if (second !== undefined && whites.length > 0)
      throw new WrongCall('--white belongs to one picture without a card.');
    const refuse = (problem: Problem, file?: string) => printRefusal(problem, values.json, terminal, file);
    const opened = await openPicture(path, pictures, terminal);
    if (!opened.ok) return refuse(opened.problem, second && path);
    let reading: Result<BlotReading, Problem>;
    if (second === undefined) reading = await readOne(opened.value, places, whites, codes);
    else {
      const later = await openPicture(second, pictures, terminal);
      if (!later.ok) return refuse(later.problem, second);
      const before = await withCard(opened.value, codes);
      if (!before.ok) return refuse(before.problem, path);
      const after = await withCard(later.value, codes);
      if (!after.ok) return refuse(after.problem, second);
      reading = readBlotPair(before.value, after.value, places);
    }
    if (!reading.ok) return refuse(reading.problem);
    terminal.print(values.json ? asJson(reading.value) : inWords(reading.value));
    return 0;
  },
});
