import type { Lab } from './lab.ts';

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

const hueOf = (a: number, b: number): number => {
  if (a === 0 && b === 0) return 0;
  const degrees = (Math.atan2(b, a) * 180) / Math.PI;
  return degrees < 0 ? degrees + 360 : degrees;
};

const towardsGrey = (chroma: number): number => Math.sqrt(chroma ** 7 / (chroma ** 7 + 25 ** 7));

/**
 * Colour difference ΔE00 with kL = kC = kH = 1.
 *
 * @param one - first colour
 * @param other - second colour; the order does not matter
 * @returns ΔE00 ≥ 0; meant for small differences of even surfaces
 * @source sharma-wu-dalal-2005, equations 2 to 22
 * @accuracy 1e-4 on the 34 published pairs, checked in ciede2000.test.ts
 */
export function ciede2000(one: Lab, other: Lab): number {
  const stretch = 1.5 - 0.5 * towardsGrey((Math.hypot(one.a, one.b) + Math.hypot(other.a, other.b)) / 2);
  const [a1, a2] = [one.a * stretch, other.a * stretch];
  const [C1, C2] = [Math.hypot(a1, one.b), Math.hypot(a2, other.b)];
  const [h1, h2] = [hueOf(a1, one.b), hueOf(a2, other.b)];
  const grey = C1 * C2 === 0;
  const turn = h2 - h1;
  const dh = grey ? 0 : turn > 180 ? turn - 360 : turn < -180 ? turn + 360 : turn;
  const [dL, dC, dH] = [other.L - one.L, C2 - C1, 2 * Math.sqrt(C1 * C2) * Math.sin(radians(dh / 2))];

  const [L, C, sum] = [(one.L + other.L) / 2, (C1 + C2) / 2, h1 + h2];
  const h = grey ? sum : Math.abs(turn) <= 180 ? sum / 2 : sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2;
  const T =
    1 -
    0.17 * Math.cos(radians(h - 30)) +
    0.24 * Math.cos(radians(2 * h)) +
    0.32 * Math.cos(radians(3 * h + 6)) -
    0.2 * Math.cos(radians(4 * h - 63));
  const fromMiddle = (L - 50) ** 2;
  const sL = 1 + (0.015 * fromMiddle) / Math.sqrt(20 + fromMiddle);
  const sC = 1 + 0.045 * C;
  const sH = 1 + 0.015 * C * T;
  const rotation = -Math.sin(radians(60 * Math.exp(-(((h - 275) / 25) ** 2)))) * 2 * towardsGrey(C);
  return Math.sqrt(
    Math.max(0, (dL / sL) ** 2 + (dC / sC) ** 2 + (dH / sH) ** 2 + rotation * (dC / sC) * (dH / sH)),
  );
}
