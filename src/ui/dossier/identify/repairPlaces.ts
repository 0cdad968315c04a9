import type { RugStanding } from '../../../dossier/index.ts';
import type { RepairPlace } from '../../weave/RepairKnots.tsx';

/** Marks of the rug whose area is known, by the numbers they carry everywhere. */
export const repairPlaces = ({ marks }: RugStanding): readonly RepairPlace[] =>
  marks.flatMap(({ mark, word, areaCm2 }, at) =>
    areaCm2 === undefined ? [] : [{ mark, words: `Mark ${at + 1}, ${word}`, areaCm2 }],
  );
