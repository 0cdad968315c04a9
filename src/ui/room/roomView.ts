import { createContext, useContext } from 'react';
import type { DryAnswer } from '../../core/drying/index.ts';
import type { Asked, DryingRug, RoomFact, RoomStanding, WorkshopSettings } from '../../dossier/index.ts';
import type { RoomNames } from '../../text/roomAlarmWords.ts';
import type { Answered } from '../call/call.ts';

/** What every section of the drying room's page reads. */
export interface RoomView {
  readonly room: string;
  readonly standing: RoomStanding;
  readonly setUp: NonNullable<RoomStanding['setUp']>;
  readonly rugs: readonly DryingRug[];
  readonly settings: WorkshopSettings;
  readonly isOwner: boolean;
  readonly asked: Asked;
  readonly now: string;
  /** The forecast as it stands; null while there is none. */
  readonly answer: DryAnswer | null;
  /** The instant of the forecast's hour 0. */
  readonly zero: string;
  readonly names: RoomNames;
  readonly record: (facts: readonly RoomFact[]) => Promise<Answered<unknown>>;
  readonly isBusy: boolean;
}

export const RoomContext = createContext<RoomView | null>(null);

/** The room that is open; only used inside its page. */
export const useRoomView = (): RoomView => {
  const view = useContext(RoomContext);
  if (view === null) throw new Error('useRoomView outside RoomPage');
  return view;
};

/** Whether a rug is alarmed of as wet past its 48 hours. */
export const pastRed = (answer: DryAnswer | null, rug: string): boolean =>
  answer?.alarms.some((alarm) => alarm.code === 'wet-past-red' && alarm.rug === rug) ?? false;

/** An hour of the forecast as an instant. */
export const instantOf = (zero: string, hour: number): string =>
  new Date(Date.parse(zero) + hour * 3_600_000).toISOString();
