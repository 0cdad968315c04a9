import type { House } from '../app/house.ts';
import { readCard } from '../core/card/index.ts';
import {
  type ColourPicture,
  comparePictures,
  drawDifferenceMap,
  type Point,
  readCardBlot,
} from '../core/colour/index.ts';
import { comparedFact, measuredReading, type RugFact, type RugStanding } from '../dossier/index.ts';
import type { Pictures } from '../ports/pictures.ts';
import { compareSentence } from '../text/colourWords.ts';
import type { Problem, Result } from '../units/index.ts';
import { paintBlot, paintCard } from './paint/paintBlot.ts';
import { paintRug } from './paint/paintRug.ts';
import type { RugDesign } from './paint/rugDesign.ts';
import type { ComparedPictures, PhotographedBlot } from './story/moment.ts';

/** What turns drawings into photographs and measures them. */
export interface Darkroom {
  readonly house: House;
  /** Turns a drawing into the bytes of a picture. */
  readonly rasterise: (svg: string) => Promise<Uint8Array>;
  readonly pictures: Pictures;
}

/** Serial of the weave card that lies in every picture of the demo. */
export const serial = 'WF3K9Q';
const cloth = '#ebe6dc';

export const seen = <Value>(result: Result<Value, Problem>): Value => {
  if (result.ok) return result.value;
  throw new Error(`a picture of the demo cannot be measured: ${result.problem.code}`);
};

/** Reads the card in a picture the way a tablet does. */
export async function opened({ house, pictures }: Darkroom, bytes: Uint8Array) {
  const picture = seen(await pictures.decode(bytes));
  const { widthPx: width, heightPx: height, channels, data } = picture;
  const codes = await house.codes.read(picture);
  return { picture, card: seen(readCard({ width, height, channels, data }, codes, { barMm: null })) };
}

/** Paints the cloth of a blot, keeps it as a photograph, and grades it. */
export async function gradedBlot(
  darkroom: Darkroom,
  { seed, stained, of }: PhotographedBlot,
): Promise<RugFact> {
  const { house, rasterise } = darkroom;
  const bytes = await rasterise(paintBlot({ serial, seed, clean: cloth, stained }, house.codes));
  const { picture, card } = await opened(darkroom, bytes);
  const blot = seen(readCardBlot(picture, card));
  const { photo } = seen(await house.photos.keep(bytes, 'image/jpeg'));
  const reading = measuredReading(blot, { card: card.serial, pictures: 'one', ...picture });
  return { type: 'DyeTested', ...of, reading, photos: [photo] };
}

/** Fine enough for the codes of the card that lies on the rug [px]. */
const cardedPx = 2600;
const floorMm = 160;
/** Side of the square in which a colour is measured. */
const placeMm = 26;

/** The face of a rug as it is photographed: plain, or with its dust and a card where it is to be compared. */
export function faceOf(design: RugDesign, { codes }: House, when: 'at the door' | 'after the work'): string {
  const { dusty } = design;
  if (dusty === undefined) return paintRug(design);
  const soil = when === 'at the door' ? dusty : 0;
  return paintRug(design, 'face', { soil, laid: paintCard(serial, codes), longPx: cardedPx });
}

type Corners = readonly [Point, Point, Point, Point];

/** Where the painter put the rug's corners: start-left, start-right, end-right, end-left, in 0 … 1. */
export function cornersOf({ widthMm, lengthMm }: RugDesign) {
  const [width, height] = [widthMm + 2 * floorMm, lengthMm + 2 * floorMm];
  const [left, right] = [floorMm / width, 1 - floorMm / width];
  const [top, bottom] = [floorMm / height, 1 - floorMm / height];
  return [
    { x: left, y: bottom },
    { x: right, y: bottom },
    { x: right, y: top },
    { x: left, y: top },
  ];
}

/** Photographs the rug once more and compares it with the picture from the door. */
export async function comparedPictures(
  darkroom: Darkroom,
  design: RugDesign,
  standing: RugStanding,
  { places }: ComparedPictures,
): Promise<readonly RugFact[]> {
  const { house, rasterise, pictures } = darkroom;
  const before = standing.photographs.find(({ shows }) => shows === 'face');
  const original = before === undefined ? null : await house.photos.read(before.photo, 'original');
  if (before === undefined || original === null) throw new Error('the demo compares a picture nobody took');
  const bytes = await rasterise(faceOf(design, house, 'after the work'));
  const taken = seen(await house.photos.keep(bytes, 'image/jpeg'));
  const [was, is] = [await opened(darkroom, original.bytes), await opened(darkroom, bytes)];
  const shares = cornersOf(design);
  const { widthPx, heightPx } = was.picture;
  const corners = shares.map(({ x, y }): Point => [x * widthPx, y * heightPx]) as unknown as Corners;
  const pxPerMm = widthPx / (design.widthMm + 2 * floorMm);
  const side = Math.round(placeMm * pxPerMm);
  const colours = standing.colours.flatMap(({ colour, name }) => {
    const [x, y] = places[colour] ?? [Number.NaN, Number.NaN];
    if (Number.isNaN(x)) return [];
    const left = (floorMm + x * design.widthMm) * pxPerMm - side / 2;
    const top = (floorMm + y * design.lengthMm) * pxPerMm - side / 2;
    return [{ name, area: { x: Math.round(left), y: Math.round(top), width: side, height: side } }];
  });
  const made = seen(comparePictures({ ...was, corners }, { ...is, corners }, colours));
  const kept = async ({ widthPx: width, heightPx: height, data }: ColourPicture) => {
    const png = await pictures.encodePng({ widthPx: width, heightPx: height, channels: 3, data });
    return { photo: seen(await house.photos.keep(png, 'image/png')).photo };
  };
  const pictured = (photo: string, card: string) => ({ photo, card, corners: shares });
  return [
    {
      ...{ type: 'PhotographTaken', photo: taken.photo, widthPx: taken.widthPx, heightPx: taken.heightPx },
      ...{ shows: 'face', occasion: 'after work' },
    },
    { type: 'CornersTapped', photo: taken.photo, corners: shares },
    comparedFact(made, {
      before: pictured(before.photo, was.card.serial),
      after: pictured(taken.photo, is.card.serial),
      shown: {
        before: await kept(made.before),
        after: await kept(made.after),
        map: await kept(drawDifferenceMap(made.map)),
      },
      sentence: compareSentence(made),
      named: standing.colours,
    }),
  ];
}
