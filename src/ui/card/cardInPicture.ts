import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';
import reader from 'zxing-wasm/reader/zxing_reader.wasm?url';
import {
  type CardProblem,
  type CardReading,
  findCodes,
  readCard,
  readEitherCard,
  withMeasuredBar,
} from '../../core/card/index.ts';
import type { Result } from '../../units/index.ts';
import type { PictureHere } from './uprightPicture.ts';

// The reader is shipped with the screens; left to itself it would be fetched from outside.
prepareZXingModule({ overrides: { locateFile: () => reader } });

/** What is known of cards before one is seen. */
export interface CardKnown {
  /** Lengths of printed 100 mm bars as measured, by the serials of their cards [mm]. */
  readonly bars?: Readonly<Record<string, number>>;
  /** The tag the picture should belong to. */
  readonly tag?: string;
  /** Whether loose pieces serve as well as the sheet with a window; they have no window to look into. */
  readonly takesLoose?: boolean;
}

/** Reads the weave card in a picture, in the thread that asks: some tenths of a second, so ask in a worker. */
export async function cardInPicture(
  { widthPx, heightPx, data }: PictureHere,
  { bars = {}, tag, takesLoose = false }: CardKnown,
): Promise<Result<CardReading, CardProblem>> {
  const picture = { width: widthPx, height: heightPx, channels: 3, data } as const;
  const codes = await findCodes(picture, (grey) =>
    readBarcodes(new ImageData(grey.data, grey.width, grey.height), {
      formats: ['QRCode'],
      tryHarder: true,
      maxNumberOfSymbols: 12,
    }),
  );
  const read = (takesLoose ? readEitherCard : readCard)(picture, codes, {
    barMm: null,
    ...(tag === undefined ? {} : { tag }),
  });
  const barMm = read.ok ? bars[read.value.serial] : undefined;
  return read.ok && barMm !== undefined ? withMeasuredBar(read.value, barMm) : read;
}
