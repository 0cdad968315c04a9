import { parseArgs } from 'node:util';
import { type CardReading, countOnCard, readEitherCard, scaleBesideCard } from '../core/card/index.ts';
import {
  countWeave,
  decideNodes,
  drawOverlay,
  type Picture,
  type Taps,
  type WeaveAnswer,
  type WeaveCount,
  type WeaveProblem,
  type WeaveScale,
  type Window,
  weaveAnswer,
} from '../core/weave/index.ts';
import type { Codes } from '../ports/codes.ts';
import type { Pictures, PixelImage } from '../ports/pictures.ts';
import { nodesWords, weaveNoteWords } from '../text/weaveWords.ts';
import { done, type Result } from '../units/index.ts';
import { type Command, type ExitCode, printRefusal, type Terminal, WrongCall } from './command.ts';
import { readArea, readFile, readNumber, readNumbers, theOnly } from './readArguments.ts';

const help = `wefthouse weave PHOTO [--mm-per-px N] [--window X,Y,W,H] [--nodes-per-knot 1|2|auto]
                [--taps X1,Y1,X2,Y2,N]... [--overlay OUT.png]
                [--card-bar-mm N] [--tag TAG] [--json]

Counts the knots on a photograph of the back of a rug.

  wefthouse weave back.jpg
  wefthouse weave back.jpg --mm-per-px 0.052 --nodes-per-knot 2 --overlay back-counted.png

The scale is read from a weave card in the picture, with a window or in loose pieces; --mm-per-px gives it
by hand. Without a scale the repeats are given in pixels and no density is stated.

--window          part of the picture to look at, in pixels from its upper left corner
--nodes-per-knot  level warps show 2 nodes to a knot on the back, fully depressed warps 1; auto (usual)
                  decides only where colour changes leave no doubt
--taps            two places and the number of repeats between them: decides the factor of that axis;
                  once along a row, once along a column
--card-bar-mm     length of the card's 100 mm bar as measured with a ruler; without it the scale is ±3 %
--tag             the rug the picture belongs to; a card of another rug is refused
--overlay         write the picture with every followed column and row marked
--json            print JSON`;

const readTaps = (texts: readonly string[]): readonly Taps[] =>
  texts.map((text) => {
    const [x1 = 0, y1 = 0, x2 = 0, y2 = 0, repeats = 0] = readNumbers(text, 5, '--taps');
    return { from: [x1, y1], to: [x2, y2], repeats };
  });

const readNodes = (text: string | undefined): 1 | 2 | null => {
  if (text === undefined || text === 'auto') return null;
  if (text === '1') return 1;
  if (text === '2') return 2;
  throw new WrongCall(`--nodes-per-knot is “${text}”; it takes 1, 2 or auto.`);
};

const figures = (value: number): string => String(Number(value.toPrecision(3)));

function inWords(answer: WeaveAnswer): string {
  const lines = (['weftwise', 'warpwise'] as const).map((axis) => {
    const { knotsPer7cm, interval95, pitchPx, confidence, basis } = answer[axis];
    const knots =
      knotsPer7cm === null || interval95 === null
        ? ''
        : `${figures(knotsPer7cm)} knots in 7 cm (${interval95.map(figures).join(' to ')}), `;
    return `${axis}: ${knots}a repeat every ${figures(pitchPx)} px, confidence ${Math.min(0.99, confidence).toFixed(2)}, ${basis === 'tapped' ? 'by your taps' : basis}`;
  });
  const { density, nodesPerKnot } = answer;
  if (density !== null)
    lines.push(
      `${figures(density.perDm2)} knots per dm² (${density.interval95.map(figures).join(' to ')}), ${figures(density.perSquareInch)} per square inch`,
    );
  lines.push(`nodes per knot: ${nodesPerKnot.value ?? 'undecided'} (${nodesWords[nodesPerKnot.why]})`);
  if (nodesPerKnot.value === null)
    for (const { nodes, weftwiseKnotsPer7cm, warpwiseKnotsPer7cm, perDm2 } of nodesPerKnot.readings)
      lines.push(
        `  with ${nodes}: ${figures(weftwiseKnotsPer7cm)} × ${figures(warpwiseKnotsPer7cm)} knots in 7 cm, ${figures(perDm2)} per dm²`,
      );
  return [...lines, ...answer.notes.map((note) => weaveNoteWords[note])].join('\n');
}

const asJson = (answer: WeaveAnswer, ms: Readonly<Record<'decode' | 'card' | 'count', number>>): string =>
  JSON.stringify({
    ...answer,
    nodesPerKnot: { ...answer.nodesPerKnot, why: nodesWords[answer.nodesPerKnot.why] },
    ms,
    notes: answer.notes.map((note) => weaveNoteWords[note]),
  });

const writeOverlay = async (
  path: string,
  image: PixelImage,
  count: WeaveCount,
  pictures: Pictures,
  terminal: Terminal,
): Promise<void> => {
  const drawn = drawOverlay(
    { width: image.widthPx, height: image.heightPx, channels: 3, data: image.data },
    count,
  );
  await terminal.writeBytes(
    path,
    await pictures.encodePng({
      widthPx: drawn.width,
      heightPx: drawn.height,
      channels: 3,
      data: Uint8Array.from(drawn.data),
    }),
  );
};

const givenScale = (mmPerPx: number | undefined): WeaveScale | null =>
  mmPerPx === undefined
    ? null
    : {
        mmPerPx,
        weftwiseMmPerPx: mmPerPx,
        warpwiseMmPerPx: mmPerPx,
        from: 'given',
        interval95: [mmPerPx, mmPerPx],
        measured: true,
      };

/** Counts in the card's window, or where the person said, or in the whole picture. */
function countIn(
  picture: Picture,
  reading: CardReading | null,
  window: Window | undefined,
  taps: readonly Taps[],
): Result<{ readonly count: WeaveCount; readonly scale: WeaveScale | null }, WeaveProblem> {
  if (reading !== null && window === undefined) return countOnCard(picture, reading, { taps });
  const counted = countWeave(picture, { taps, ...(window === undefined ? {} : { window }) });
  if (!counted.ok) return counted;
  return done({
    count: counted.value,
    scale: reading === null ? null : scaleBesideCard(reading, counted.value),
  });
}

/** `wefthouse weave`: pictures are opened by what `main.ts` gives. */
export const weaveCommand = (pictures: Pictures, codes: Codes): Command => ({
  name: 'weave',
  summary: 'count the knots on a photograph of the back',
  help,
  async run(args, terminal): Promise<ExitCode> {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        'mm-per-px': { type: 'string' },
        window: { type: 'string' },
        'nodes-per-knot': { type: 'string' },
        taps: { type: 'string', multiple: true, default: [] },
        overlay: { type: 'string' },
        'card-bar-mm': { type: 'string' },
        tag: { type: 'string' },
        json: { type: 'boolean', default: false },
      },
    });
    const path = theOnly(positionals, 'Give one photograph.');
    const window = values.window === undefined ? undefined : readArea(values.window, '--window');
    const taps = readTaps(values.taps);
    const nodes = readNodes(values['nodes-per-knot']);
    const mmPerPx = readNumber(values['mm-per-px'], '--mm-per-px');
    if (mmPerPx !== undefined) {
      const { least, most } = { least: 0.001, most: 5 };
      if (!(mmPerPx >= least && mmPerPx <= most))
        return printRefusal(
          {
            code: 'out-of-range',
            facts: { field: 'the scale', value: mmPerPx, least, most, symbol: 'mm per px' },
          },
          values.json,
          terminal,
        );
    }

    const barMm = readNumber(values['card-bar-mm'], '--card-bar-mm');
    const bytes = await readFile(path, terminal);
    const begun = performance.now();
    const decoded = await pictures.decode(bytes);
    if (!decoded.ok) return printRefusal(decoded.problem, values.json, terminal);
    const image = decoded.value;
    const opened = performance.now();
    const picture = { width: image.widthPx, height: image.heightPx, channels: 3, data: image.data } as const;
    const card =
      mmPerPx === undefined
        ? readEitherCard(picture, await codes.read(image), {
            barMm: barMm ?? null,
            ...(values.tag === undefined ? {} : { tag: values.tag }),
          })
        : null;
    // No card is no fault: the count then stays in pixels. A card that cannot be trusted is one.
    if (card?.ok === false && card.problem.code !== 'card-not-found')
      return printRefusal(card.problem, values.json, terminal);
    const reading = card?.ok === true ? card.value : null;
    const read = performance.now();
    const count = countIn(picture, reading, window, taps);
    if (!count.ok) return printRefusal(count.problem, values.json, terminal);
    const bare = weaveAnswer(
      count.value.count,
      count.value.scale ?? givenScale(mmPerPx),
      decideNodes(nodes, count.value.count.nodesHint),
    );
    // A tag that cannot be read proves nothing, and the person asked for proof.
    const unread = values.tag !== undefined && (reading === null || reading.tag === null);
    const answer: WeaveAnswer = unread ? { ...bare, notes: [...bare.notes, 'card-tag-not-read'] } : bare;
    const counted = performance.now();
    if (values.overlay !== undefined)
      await writeOverlay(values.overlay, image, count.value.count, pictures, terminal);
    const ms = { decode: opened - begun, card: read - opened, count: counted - read };
    terminal.print(values.json ? asJson(answer, ms) : inWords(answer));
    return 0;
  },
});
