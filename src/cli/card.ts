import { randomInt } from 'node:crypto';
import { parseArgs } from 'node:util';
import { cardPdf, drawCard, newCardSerial } from '../core/card/index.ts';
import type { Codes } from '../ports/codes.ts';
import { problemWords } from '../text/problemWords.ts';
import { type Command, printRefusal, WrongCall } from './command.ts';

const help = `wefthouse card --out CARD.pdf [--tag TAG] [--serial SERIAL] [--paper a4|letter] [--json]

Makes the weave card: a sheet with a window of 70 mm, codes at its corners, greys and an arrow, which gives
a photograph its scale, perspective and colour.

Print it at 100 % on stiff white paper, cut the window out, measure the 100 mm bar once with a steel ruler
and keep the number: a card that was never measured gives a scale of ±3 %.

--tag     the tag of the rug, as a code of its own
--serial  six letters or digits; made by chance when left out
--paper   a4 (usual) or letter
--json    print JSON`;

/** `wefthouse card`: codes are drawn by what `main.ts` gives. */
export const cardCommand = (codes: Codes): Command => ({
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
        json: { type: 'boolean', default: false },
      },
    });
    const { out, paper } = values;
    if (positionals.length > 0) throw new WrongCall(`“${positionals[0]}” belongs to no option.`);
    if (out === undefined) throw new WrongCall('Say where the card goes: --out card.pdf.');
    if (paper !== 'a4' && paper !== 'letter')
      throw new WrongCall(`--paper is “${paper}”; it takes a4 or letter.`);
    const serial = values.serial ?? newCardSerial(randomInt);
    const drawn = drawCard({ serial, tag: values.tag ?? null, draw: codes.draw });
    if (!drawn.ok) return printRefusal(drawn.problem, problemWords, values.json, terminal);
    await terminal.writeBytes(out, cardPdf(drawn.value, paper));
    terminal.print(
      values.json
        ? JSON.stringify({ serial, tag: values.tag ?? null, paper, out })
        : `Card ${serial} is in ${out}. Print it at 100 %, measure its 100 mm bar, and keep the number with the serial.`,
    );
    return 0;
  },
});
