import { parseArgs } from 'node:util';
import {
  knotsPerSquareMetre,
  notation,
  notations,
  readKnotDensity,
  repairKnots,
  totalKnots,
  type WrittenDensity,
  weavingDays,
  writeKnotDensity,
} from '../core/weave/index.ts';
import { quantity } from '../units/index.ts';
import { type Command, printRefusal, WrongCall } from './command.ts';
import { readNumber } from './readArguments.ts';

const help = `wefthouse convert NUMBER NOTATION [--to NOTATION] [--raj-mm N] [--area-m2 N] [--repair-cm2 N] [--json]

Rewrites a knot density in another notation, or in all of them.

  wefthouse convert 40 raj
  wefthouse convert 9/60 indian --to per-square-inch
  wefthouse convert 26x33 turkish --area-m2 6

NOTATION     ${notations()
  .map((one) => `${one.id.padEnd(22)} ${one.name}`)
  .join('\n             ')}
--raj-mm     length over which a raj counts (usual 70; 65 and 75 are also met)
--area-m2    also give the knots of so large a rug, and the days one weaver needs for them
--repair-cm2 also give the knots and hours to reknot so large an area
--json       print JSON

A single number along one axis says nothing about the other: where square knots had to be assumed, the
line says so.`;

const round = (value: number): string =>
  value.toLocaleString('en', { maximumSignificantDigits: 3, useGrouping: true });

const line = ({ name, text, assumesSquare }: WrittenDensity): string =>
  `${text.padStart(10)}  ${name}${assumesSquare ? '  (if the knots are square)' : ''}`;

export const convertCommand: Command = {
  name: 'convert',
  summary: 'rewrite a knot density in the notations of the trade',
  help,
  async run(args, terminal) {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        to: { type: 'string' },
        'raj-mm': { type: 'string' },
        'area-m2': { type: 'string' },
        'repair-cm2': { type: 'string' },
        json: { type: 'boolean', default: false },
      },
    });
    const [given, from, ...more] = positionals;
    if (given === undefined || from === undefined || more.length > 0)
      throw new WrongCall('Give a number and its notation, for example: convert 40 raj.');
    const settings = { rajMm: readNumber(values['raj-mm'], '--raj-mm') ?? 70 };
    const read = readKnotDensity(given, from, settings);
    if (!read.ok) return printRefusal(read.problem, values.json, terminal);
    const density = read.value;

    const wanted = values.to === undefined ? undefined : notation(values.to, settings);
    if (wanted?.ok === false) return printRefusal(wanted.problem, values.json, terminal);
    const ways = wanted === undefined ? notations(settings) : [wanted.value];
    const written = ways.map((way) => writeKnotDensity(density, way));

    const areaM2 = readNumber(values['area-m2'], '--area-m2');
    const repairCm2 = readNumber(values['repair-cm2'], '--repair-cm2');
    for (const [field, value] of [
      ['the area of the rug', areaM2],
      ['the area to reknot', repairCm2 === undefined ? undefined : repairCm2 / 1e4],
    ] as const) {
      const sound = value === undefined ? undefined : quantity('squareMetre', value, field);
      if (sound?.ok === false) return printRefusal(sound.problem, values.json, terminal);
    }
    const knots = areaM2 === undefined ? undefined : totalKnots([{ areaM2, density, juftiShare: 0 }]);
    const days = knots === undefined ? undefined : weavingDays(knots);
    const repair = repairCm2 === undefined ? undefined : repairKnots(repairCm2, density);
    const { assumesSquare } = knotsPerSquareMetre(density);

    if (values.json) {
      terminal.print(
        JSON.stringify({
          given: { text: given, notation: from },
          rajMm: settings.rajMm,
          assumesSquare,
          densities: written,
          ...(knots === undefined ? {} : { rug: { areaM2, knots, weavingDays: days } }),
          ...(repair === undefined ? {} : { repair: { areaCm2: repairCm2, ...repair } }),
        }),
      );
      return 0;
    }
    terminal.print(written.map(line).join('\n'));
    if (knots !== undefined && days !== undefined)
      terminal.print(
        `${round(knots)} knots in ${areaM2} m²; one weaver needs about ${round(days.usual)} days (${round(days.least)} to ${round(days.most)}).`,
      );
    if (repair !== undefined)
      terminal.print(
        `${round(repair.knots)} knots in ${repairCm2} cm² to reknot; ${round(repair.leastHours)} to ${round(repair.mostHours)} hours with the foundation.`,
      );
    return 0;
  },
};
