import { useEffect } from 'react';
import type { RoomChange } from '../../dossier/index.ts';
import { useRoomView } from './roomView.ts';

export type OnWhat = { readonly onWhat: (change: RoomChange | null) => void };

/** Now, on the forecast's clock [h]. */
export const useNowHour = (): number => {
  const { now, zero } = useRoomView();
  return (Date.parse(now) - Date.parse(zero)) / 3_600_000;
};

/** Tells the change whenever one of its parts is another. */
export const useTold = (change: RoomChange | null, onWhat: OnWhat['onWhat']) => {
  const said = JSON.stringify(change);
  useEffect(() => onWhat(JSON.parse(said) as RoomChange | null), [said, onWhat]);
};
