import table from '../../../data/air/regain.json' with { type: 'json' };
import type { Fibre, FibreShares } from '../wash/index.ts';
import { monotoneCurve } from './monotoneCurve.ts';

/** A value with the range it may lie in. */
export interface Estimate {
  readonly likely: number;
  readonly least: number;
  readonly most: number;
}

export type Branch = 'from the dry side' | 'from the wet side';

interface Material {
  readonly name: string;
  readonly fromDry: (rh: number) => number;
  readonly desorptionAt65: number;
}

const natural = table.rows.map(
  ({ material, regainPercent, saturationPercent, desorptionPointsAt65 }): Material => ({
    name: material,
    fromDry: monotoneCurve([
      [0, 0],
      ...table.humidityPercent.map(
        (humidity, i) => [humidity / 100, (regainPercent[i] ?? Number.NaN) / 100] as const,
      ),
      [1, saturationPercent / 100],
    ]),
    desorptionAt65: desorptionPointsAt65 / 100,
  }),
);
const synthetic = table.synthetic.rows.map(
  ({ material, at65Percent, saturationPercent }): Material => ({
    name: material,
    fromDry: monotoneCurve([
      [0, 0],
      [0.65, at65Percent / 100],
      [1, saturationPercent / 100],
    ]),
    desorptionAt65: 0,
  }),
);
const materials = [...natural, ...synthetic];

const rowOf = (fibre: Fibre): Material | null => {
  const name = table.fibres.rows[fibre];
  return materials.find((material) => material.name === name) ?? null;
};

const regainOf = (material: Material, rh: number, branch: Branch): number => {
  const taper = rh <= 0.65 ? rh / 0.65 : (1 - rh) / 0.35;
  const offset = branch === 'from the wet side' ? material.desorptionAt65 * Math.max(0, taper) : 0;
  return material.fromDry(rh) + offset;
};

/**
 * Moisture a blend holds at rest in air of a humidity.
 *
 * @param shares - shares of dry mass by fibre, adding up to 1; empty means unknown
 * @param rh - relative humidity [fraction 0 … 1]
 * @param branch - from which side the fibre came to rest; drying ends on the wet side's branch
 * @returns regain [kg water per kg oven-dry fibre]; where a fibre has no row, the range over all rows
 * @source ashrae-hvac-regain, table: Regain of Hygroscopic Materials (data/air/regain.json); offsets morton-hearle
 * @accuracy the table's rows hold within about ±1 point between lots of one fibre
 * @example equilibriumRegain({ wool: 1 }, 0.5, 'from the dry side').likely // 0.128
 */
export function equilibriumRegain(shares: FibreShares, rh: number, branch: Branch): Estimate {
  const every = materials.map((material) => regainOf(material, rh, branch));
  const whole: Estimate = {
    likely: natural[0] === undefined ? Number.NaN : regainOf(natural[0], rh, branch),
    least: Math.min(...every),
    most: Math.max(...every),
  };
  const parts = Object.entries(shares) as [Fibre, number][];
  if (parts.length === 0) return whole;
  return parts.reduce<Estimate>(
    (sum, [fibre, share]) => {
      const row = rowOf(fibre);
      const value = row === null ? null : regainOf(row, rh, branch);
      return {
        likely: sum.likely + share * (value ?? whole.likely),
        least: sum.least + share * (value ?? whole.least),
        most: sum.most + share * (value ?? whole.most),
      };
    },
    { likely: 0, least: 0, most: 0 },
  );
}

/**
 * Mass of a rug without any water, from a weighing at rest in known air.
 *
 * @param massKg - mass as weighed [kg, > 0]
 * @param shares - fibre blend by dry mass
 * @param rh - relative humidity of the room [fraction], or null when nobody noted it (30 to 80 % assumed)
 * @param restedADay - whether the rug had lain at least 24 h in that air; if not, ±5 %
 * @returns oven-dry mass [kg] with the range from the branch, the blend and the rest
 * @source ashrae-hvac-regain, table: Regain of Hygroscopic Materials; the 5 % is a workshop setting
 */
export function ovenDryMass(
  massKg: number,
  shares: FibreShares,
  rh: number | null,
  restedADay: boolean,
): Estimate {
  const [low, middle, high] = rh === null ? [0.3, 0.55, 0.8] : [rh, rh, rh];
  const slack = restedADay ? 0 : 0.05;
  const driest = equilibriumRegain(shares, low, 'from the dry side');
  const wettest = equilibriumRegain(shares, high, 'from the wet side');
  const between =
    (equilibriumRegain(shares, middle, 'from the dry side').likely +
      equilibriumRegain(shares, middle, 'from the wet side').likely) /
    2;
  return {
    likely: massKg / (1 + between),
    least: (massKg * (1 - slack)) / (1 + wettest.most),
    most: (massKg * (1 + slack)) / (1 + driest.least),
  };
}
