import { useState } from 'react';
import {
  type AxisCount,
  decideNodes,
  type Taps,
  type WeaveCount,
  type WeaveScale,
  weaveAnswer,
} from '../../core/weave/index.ts';
import { type AxisSeen, type KnotBasis, seenByCounter } from '../../dossier/index.ts';
import type { CardKnown } from '../card/cardInPicture.ts';
import { type Axis, axes, axisOfTaps, type HandCount, scaleOfCard, seenByHand } from './placeCount.ts';
import type { SaidNodes } from './rugCount.ts';
import { useWeaveWorker } from './useWeaveWorker.ts';
import { noScale, scaleOf, type TypedScale, type WeaveTap } from './weaveScale.ts';

export interface Pitches {
  readonly weftwisePx: number;
  readonly warpwisePx: number;
  /** How much speaks for it against the others: what a touch alone leaves of confidence. */
  readonly weight: number;
}

/** A touch on a reading names it and proves nothing: the picture's own weight stays. */
const asChosen = (count: WeaveCount, chosen: Pitches | null): WeaveCount => {
  const axis = (one: AxisCount): AxisCount =>
    chosen === null || one.basis !== 'confirmed'
      ? one
      : { ...one, basis: 'automatic', confidence: Math.min(one.confidence, chosen.weight) };
  return { ...count, weftwise: axis(count.weftwise), warpwise: axis(count.warpwise) };
};

type HandCounts = Readonly<Partial<Record<Axis, HandCount>>>;
const unconfirmed: Readonly<Record<Axis, boolean>> = { weftwise: false, warpwise: false };

/** One photograph of one place: what the picture counts, what a person says to it, and what comes of both. */
export function usePlaceCount(file: File, known: CardKnown, nodes: SaidNodes) {
  const worker = useWeaveWorker(file, known);
  const { picture, card, counted, count } = worker;
  const [tapped, setTapped] = useState<readonly Taps[]>([]);
  const [hand, setHand] = useState<HandCounts>({});
  const [chosen, setChosen] = useState<Pitches | null>(null);
  const [others, setOthers] = useState<readonly Pitches[]>([]);
  const [confirmed, setConfirmed] = useState(unconfirmed);
  const [scaleTyped, setScaleTyped] = useState<TypedScale>(noScale);

  const reading = card?.ok === true ? card.value : null;
  const counting = counted?.ok === true ? asChosen(counted.value.count, chosen) : null;
  const undecided =
    counted?.ok === false && counted.problem.code === 'weave-undecided'
      ? counted.problem.facts.candidates
      : [];
  const cardScale = counted?.ok === true ? counted.value.cardScale : null;
  const scale: WeaveScale | null =
    reading !== null
      ? (cardScale ?? scaleOfCard(reading))
      : picture === null
        ? null
        : scaleOf(scaleTyped, picture.reducedBy);

  const axisOf = ({ from, to }: Taps): Axis =>
    axisOfTaps({ x: from[0], y: from[1] }, { x: to[0], y: to[1] }, reading);
  const basisOf = (axis: Axis): KnotBasis => {
    if (confirmed[axis]) return 'confirmed';
    return tapped.some((pair) => axisOf(pair) === axis) ? 'tapped' : 'automatic';
  };
  const foundAlong = (axis: Axis): AxisSeen | null => {
    const own = hand[axis];
    if (scale === null) return null;
    if (own !== undefined) return seenByHand(own, scale, reading);
    return counting === null ? null : seenByCounter(axis, counting[axis], scale, basisOf(axis));
  };
  const found = { weftwise: foundAlong('weftwise'), warpwise: foundAlong('warpwise') };

  const recount = (taps: readonly Taps[], pair: Pitches | null) => {
    setTapped(taps);
    setChosen(pair);
    setConfirmed(unconfirmed);
    if (pair === null) return count({ taps });
    const { weftwisePx, warpwisePx } = pair;
    count({ taps, confirmed: { weftwisePx, warpwisePx } });
  };
  const offered: readonly Pitches[] =
    others.length > 0
      ? others
      : (counting?.candidates ?? undecided).map(({ weftwise, warpwise, weight }) => ({
          weftwisePx: weftwise,
          warpwisePx: warpwise,
          weight,
        }));
  const decided = decideNodes(
    nodes === 'unknown' ? null : nodes === '1' ? 1 : 2,
    counting?.nodesHint ?? null,
  );

  return {
    ...worker,
    reading,
    counting,
    scale,
    scaleTyped,
    typeScale: (changed: Partial<TypedScale>) => setScaleTyped((before) => ({ ...before, ...changed })),
    found,
    nodes: decided,
    /** What colour changes alone leave no doubt of. */
    nodesSeen: decideNodes(null, counting?.nodesHint ?? null).value,
    /** What to know of the picture's own count while a person has not confirmed it. */
    notes:
      counting === null || axes.every((axis) => confirmed[axis] || hand[axis] !== undefined)
        ? []
        : weaveAnswer(counting, scale, decided).notes.filter((note) =>
            ['check-the-overlay', 'few-pixels', 'other-factor-close'].includes(note),
          ),
    offered: tapped.length > 0 ? [] : offered,
    chosen,
    choose: (pair: Pitches) => {
      setOthers(offered);
      recount([], pair);
    },
    confirmed,
    confirm: (axis: Axis, isSure: boolean) => setConfirmed((before) => ({ ...before, [axis]: isSure })),
    isOwn: (axis: Axis) => hand[axis] !== undefined,
    refine: (from: WeaveTap, to: WeaveTap, repeats: number) => {
      const pair: Taps = { from: [from.x, from.y], to: [to.x, to.y], repeats };
      const axis = axisOf(pair);
      setHand((before) => Object.fromEntries(Object.entries(before).filter(([one]) => one !== axis)));
      recount([...tapped.filter((other) => axisOf(other) !== axis), pair], chosen);
    },
    keepOwn: (from: WeaveTap, to: WeaveTap, repeats: number, axis: Axis) =>
      setHand((before) => ({ ...before, [axis]: { from, to, repeats } })),
    forget:
      tapped.length === 0 && Object.keys(hand).length === 0
        ? null
        : () => {
            setHand({});
            recount([], null);
          },
  };
}

export type PlaceCount = ReturnType<typeof usePlaceCount>;
