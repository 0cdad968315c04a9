import { randomInt } from 'node:crypto';
import { parseArgs } from 'node:util';
import { cardPdf, drawCard, drawLooseCard, newCardSerial, readEitherCard } from '../core/card/index.ts';
import type { Codes } from '../ports/codes.ts';
import type { Pictures } from '../ports/pictures.ts';
import { openPicture } from './cardPhotograph.ts';
import { type Command, type ExitCode, printRefusal, type Terminal, WrongCall } from './command.ts';
import { readNumber } from './readArguments.ts';

const help = `wefthouse card --out CARD.pdf [--tag TAG] [--serial SERIAL] [--paper a4|letter] [--form window|loose] [--json]
       wefthouse card --read PHOTO [--bar-mm N] [--json]

Makes the weave card: a sheet with a window of 70 mm, codes at its corners, greys and an arrow, which gives
a photograph its scale, perspective and colour.

Print it at 100 % on stiff white paper, cut the window out, measure the 100 mm bar once with a steel ruler
and keep the number: a card that was never measured gives a scale of ±3 %.

--tag     the tag of the rug: up to 12 letters, digits and hyphens on the sheet, 7 on loose pieces
--serial  six letters or digits; made by chance when left out
--paper   a4 (usual) or letter
--form    window (usual), or loose: four pieces to lie at the corners of a whole rug
--read    say what the card in a photograph tells, either form
--bar-mm  length of that card's 100 mm bar as measured; without it the scale is ±3 %
--json    print JSON`;

/** What the card in a photograph tells: the sheet with a window first, else loose pieces. */
async function readFrom(
  path: string,
  barMm: number | null,
  pictures: Pictures,
  codes: Codes,
  json: boolean,
  terminal: Terminal,
): Promise<ExitCode> {
  const opened = await openPicture(path, pictures, terminal);
  if (!opened.ok) return printRefusal(opened.problem, json, terminal);
  const { widthPx: width, heightPx: height, channels, data } = opened.value;
  const read = readEitherCard({ width, height, channels, data }, await codes.read(opened.value), { barMm });
  if (!read.ok) return printRefusal(read.problem, json, terminal);
  const { form, serial, tag, corners, mmPerPx, interval95, measured, angleDeg, patches } = read.value;
  if (json)
    terminal.print(
      JSON.stringify({ form, serial, tag, corners, mmPerPx, interval95, measured, angleDeg, patches }),
    );
  else
    terminal.print(
      `${form === 'window' ? 'Card' : 'Loose pieces'} ${serial}${tag === null ? '' : `, tag ${tag}`}: ${corners.length} of 4 codes, ${mmPerPx.toPrecision(4)} mm per px (${interval95.map((bound) => bound.toPrecision(4)).join(' to ')})${measured ? '' : '; its bar was never measured, the scale is unverified'}.`,
    );
  return 0;
}

/** `wefthouse card`: codes are drawn, and pictures opened, by what `main.ts` gives. */
export const cardCommand = (pictures: Pictures, codes: Codes): Command => ({
  name: 'card',
  summary: 'make the weave card that gives photographs their scale',
  help,
  async run(args, terminal) {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        out: { type: 'string' },
        tag: { type: 'string' },
        serial: { type: 'string' },
        paper: { type: 'string', default: 'a4' },
        form: { type: 'string', default: 'window' },
        read: { type: 'string' },
        'bar-mm': { type: 'string' },
        json: { type: 'boolean', default: false },
      },
    });
    const { out, paper, form } = values;
    if (positionals.length > 0) throw new WrongCall(`“${positionals[0]}” belongs to no option.`);
    if (values.read !== undefined)
      return readFrom(
        values.read,
        readNumber(values['bar-mm'], '--bar-mm') ?? null,
        pictures,
        codes,
        values.json,
        terminal,
      );
    if (form !== 'window' && form !== 'loose')
      throw new WrongCall(`--form is “${form}”; it takes window or loose.`);
    if (out === undefined) throw new WrongCall('Say where the card goes: --out card.pdf.');
    if (paper !== 'a4' && paper !== 'letter')
      throw new WrongCall(`--paper is “${paper}”; it takes a4 or letter.`);
    const serial = values.serial ?? newCardSerial(randomInt);
    const draw = form === 'loose' ? drawLooseCard : drawCard;
    // Codes hold capital letters only; a tag means the same either way.
    const tag = values.tag?.toUpperCase() ?? null;
    const drawn = draw({ serial, tag, draw: codes.draw });
    if (!drawn.ok) return printRefusal(drawn.problem, values.json, terminal);
    await terminal.writeBytes(out, cardPdf(drawn.value, paper));
    terminal.print(
      values.json
        ? JSON.stringify({ serial, tag, form, paper, out })
        : `Card ${serial} is in ${out}. Print it at 100 %, measure its 100 mm bar, and keep the number with the serial.`,
    );
    return 0;
  },
});
