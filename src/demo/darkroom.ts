import type { House } from '../app/house.ts';
import { readCard } from '../core/card/index.ts';
import { readCardBlot } from '../core/colour/index.ts';
import { measuredReading, type RugFact } from '../dossier/index.ts';
import type { Pictures } from '../ports/pictures.ts';
import type { Problem, Result } from '../units/index.ts';
import { paintBlot } from './paint/paintBlot.ts';
import type { PhotographedBlot } from './story/moment.ts';

/** What turns drawings into photographs and measures them. */
export interface Darkroom {
  readonly house: House;
  /** Turns a drawing into the bytes of a picture. */
  readonly rasterise: (svg: string) => Promise<Uint8Array>;
  readonly pictures: Pictures;
}

/** Serial of the weave card that lies in every picture of the demo. */
const serial = 'WF3K9Q';
const cloth = '#ebe6dc';

const seen = <Value>(result: Result<Value, Problem>): Value => {
  if (result.ok) return result.value;
  throw new Error(`a picture of the demo cannot be measured: ${result.problem.code}`);
};

/** Reads the card in a picture the way a tablet does. */
async function opened({ house, pictures }: Darkroom, bytes: Uint8Array) {
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
