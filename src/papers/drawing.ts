/** Small pieces of our own drawings: SVG as text, in printed millimetres. */

/** Inks and dyes of the look, as they stand on white paper. */
export const hue = {
  ink: '#231c15',
  soft: '#6a5d4d',
  line: '#ddd2bf',
  wool: '#f7f2e8',
  madder: '#9a3324',
  indigo: '#27457a',
  weld: '#8a6a00',
  walnut: '#6b4a2f',
  moss: '#3f6b3a',
} as const;

/** Text made safe to stand inside SVG; control letters, which XML cannot hold, are left out. */
export const escaped = (words: string): string =>
  words
    .replace(/\p{Cc}/gu, ' ')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');

const shown = (value: number): string => String(Number(value.toFixed(3)));

type Attributes = Readonly<Record<string, string | number | undefined>>;

/** One SVG element; numbers are rounded to a thousandth of a millimetre, text is made safe. */
export const element = (name: string, attributes: Attributes, inside = ''): string => {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${typeof value === 'number' ? shown(value) : escaped(String(value))}"`)
    .join('');
  return inside === '' ? `<${name}${written}/>` : `<${name}${written}>${inside}</${name}>`;
};

export const label = (x: number, y: number, words: string, attributes: Attributes = {}): string =>
  element(
    'text',
    { x, y, 'font-family': 'Vazirmatn', 'font-size': 2.8, fill: hue.ink, ...attributes },
    escaped(words),
  );

export const drawing = (widthMm: number, heightMm: number, inside: readonly string[]): string =>
  element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${shown(widthMm)} ${shown(heightMm)}`,
      width: `${shown(widthMm)}mm`,
      height: `${shown(heightMm)}mm`,
    },
    inside.join(''),
  );

export const pointsOf = (points: readonly (readonly [number, number])[]): string =>
  points.map(([x, y]) => `${shown(x)},${shown(y)}`).join(' ');
