import { parseArgs } from 'node:util';
import {
  type ColourProblem,
  type CompareSide,
  type Comparison,
  comparePictures,
  drawDifferenceMap,
  type NamedArea,
  type Point,
} from '../core/colour/index.ts';
import type { Codes } from '../ports/codes.ts';
import type { Pictures } from '../ports/pictures.ts';
import { compareNoteWords, compareSentence } from '../text/colourWords.ts';
import type { Problem } from '../units/index.ts';
import { openPicture, withCard } from './cardPhotograph.ts';
import { type Command, printRefusal, WrongCall } from './command.ts';
import { readArea, readNumbers } from './readArguments.ts';

const help = `wefthouse compare BEFORE AFTER [--corners X1,Y1,…,X4,Y4:X1,Y1,…,X4,Y4] [--colour NAME=X,Y,W,H]...
                 [--map OUT.png] [--json]

Compares two photographs of one rug, before and after work, each corrected by the weave card in it. For a whole rug
the loose pieces of the card serve, one beside each corner; then --corners is needed.

  wefthouse compare intake.jpg return.jpg --corners 310,220,3650,240,3600,2790,330,2750:290,200,3700,215,3640,2800,300,2760 \\
    --colour red=1200,900,160,160 --colour ivory=2100,900,120,160 --map changed.png

--corners  the rug's four corners in pixels, in the same order on both pictures, a colon between the pictures;
           without them the card must lie at the same place of the rug
--colour   a colour of the rug, by a place on the first picture, any number of times
--map      write the map of ΔE00 with its scale as PNG
--json     print JSON

Both pictures should show the same card: with two cards every colour is uncertain by 5 ΔE more.`;

type Corners = readonly [Point, Point, Point, Point];

function readCorners(text: string | undefined): readonly [Corners, Corners] | undefined {
  if (text === undefined) return undefined;
  const [one, other, ...more] = text.split(':');
  if (one === undefined || other === undefined || more.length > 0)
    throw new WrongCall('--corners takes two sets of eight numbers with a colon between.');
  const corners = (of: string): Corners => {
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = readNumbers(of, 8, '--corners');
    return [
      [a, b],
      [c, d],
      [e, f],
      [g, h],
    ];
  };
  return [corners(one), corners(other)];
}

const readColour = (text: string): NamedArea => {
  const [name = '', place, ...more] = text.split('=');
  if (name.trim() === '' || place === undefined || more.length > 0)
    throw new WrongCall(`--colour is “${text}”; it takes NAME=X,Y,W,H.`);
  return { name: name.trim(), area: readArea(place, '--colour') };
};

function inWords(comparison: Comparison): string {
  const { colours, unmeasured, middleDeltaE, control, notes } = comparison;
  return [
    compareSentence(comparison),
    `half of the rug changed by less than ΔE00 ${middleDeltaE.toFixed(1)}; the card’s greys by ΔE ${control.deltaE.toFixed(1)}`,
    ...colours.map(({ name, before, after, deltaEF, grade, gradeInterval: [lowest, highest], hueMoved }) =>
      [
        `${name}: L* ${before.L.toFixed(0)} → ${after.L.toFixed(0)}, a* ${before.a.toFixed(0)} → ${after.a.toFixed(0)},`,
        `b* ${before.b.toFixed(0)} → ${after.b.toFixed(0)}, ΔE_F ${deltaEF.toFixed(1)},`,
        `change grade ${grade} (${lowest === highest ? lowest : `${lowest} to ${highest}`} at 95 %)${hueMoved ? ', hue moved' : ''}`,
      ].join(' '),
    ),
    ...unmeasured.map(({ name, why }) => `${name}: not measured (${unmeasuredWords[why]})`),
    ...notes.map((note) => compareNoteWords[note]),
  ].join('\n');
}

const unmeasuredWords = {
  'too-small': 'too small',
  'not-in-both': 'not in both pictures',
  clipped: 'too bright or too dark',
} as const;

const asJson = (comparison: Comparison): string => {
  const { colours, unmeasured, lightness, chroma, hueMoved, control, alignment, sameCard, middleDeltaE } =
    comparison;
  return JSON.stringify({
    ...{ lightness, chroma, colours, unmeasured, hueMoved, middleDeltaE, control, alignment, sameCard },
    sentence: compareSentence(comparison),
    notes: comparison.notes.map((note) => compareNoteWords[note]),
  });
};

/** `wefthouse compare`: pictures are opened and codes read by what `main.ts` gives. */
export const compareCommand = (pictures: Pictures, codes: Codes): Command => ({
  name: 'compare',
  summary: 'compare two photographs of a rug, before and after',
  help,
  async run(args, terminal) {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        corners: { type: 'string' },
        colour: { type: 'string', multiple: true, default: [] },
        map: { type: 'string' },
        json: { type: 'boolean', default: false },
      },
    });
    if (positionals.length !== 2) throw new WrongCall('Give two photographs: before and after.');
    const corners = readCorners(values.corners);
    const colours = values.colour.map(readColour);
    const refuse = (problem: Problem, file?: string) => printRefusal(problem, values.json, terminal, file);
    const sides: CompareSide[] = [];
    for (const [index, path] of positionals.entries()) {
      const opened = await openPicture(path, pictures, terminal);
      if (!opened.ok) return refuse(opened.problem, path);
      const shown = await withCard(opened.value, codes, 'any');
      if (!shown.ok) return refuse(shown.problem, path);
      const tapped = corners?.[index];
      sides.push({ ...shown.value, ...(tapped === undefined ? {} : { corners: tapped }) });
    }
    const [before, after] = sides;
    if (before === undefined || after === undefined) throw new Error('two pictures were opened above');
    const compared = comparePictures(before, after, colours);
    if (!compared.ok) return refuse(compared.problem satisfies ColourProblem);
    if (values.map !== undefined) {
      const drawn = drawDifferenceMap(compared.value.map);
      await terminal.writeBytes(values.map, await pictures.encodePng({ ...drawn, channels: 3 }));
    }
    terminal.print(values.json ? asJson(compared.value) : inWords(compared.value));
    return 0;
  },
});
