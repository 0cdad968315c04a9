import { countOnCard, withMeasuredBar } from '../core/card/index.ts';
import { weaveAlgorithm } from '../core/weave/index.ts';
import { type PhotographedPlace, type RugFact, scaleByCard, seenByCounter } from '../dossier/index.ts';
import { type Darkroom, opened, seen, serial } from './darkroom.ts';
import { paintBack } from './paint/paintBack.ts';
import type { PhotographedBack, PhotographedCount } from './story/moment.ts';

/** The 100 mm bar of the demo's weave card, as measured. */
export const barMm = 100;

/** Paints a place of the back, keeps it as a photograph, and counts it as a person confirmed it on the strokes. */
async function countedPlace(darkroom: Darkroom, back: PhotographedBack): Promise<PhotographedPlace> {
  const { house, rasterise } = darkroom;
  const bytes = await rasterise(paintBack(back, serial, house.codes));
  const { picture, card: unmeasured } = await opened(darkroom, bytes);
  const card = seen(withMeasuredBar(unmeasured, barMm));
  const { widthPx: width, heightPx: height, channels, data } = picture;
  const per = (knots: number) => 70 / knots / card.mmPerPx;
  const { count, scale } = seen(
    countOnCard({ width, height, channels, data }, card, {
      confirmed: {
        weftwisePx: per(2 * back.weftwiseKnotsPer7cm),
        warpwisePx: per(back.warpwiseKnotsPer7cm),
      },
    }),
  );
  const { photo } = seen(await house.photos.keep(bytes, 'image/jpeg'));
  return {
    place: back.place,
    photo,
    scale: scaleByCard(card, scale, 1, barMm),
    weftwise: seenByCounter('weftwise', count.weftwise, scale, 'confirmed'),
    warpwise: seenByCounter('warpwise', count.warpwise, scale, 'confirmed'),
  };
}

/** Counts knots on a photograph of each place; two nodes to a knot are painted. */
export async function countedKnots(darkroom: Darkroom, { backs }: PhotographedCount): Promise<RugFact> {
  const places: PhotographedPlace[] = [];
  for (const back of backs) places.push(await countedPlace(darkroom, back));
  return {
    type: 'KnotsCounted',
    counted: 'photographed',
    nodesPerKnot: 2,
    nodesWhy: 'seen on the back',
    algorithm: weaveAlgorithm,
    places,
  };
}
