import { expect, test } from 'vitest';
import { tagLabel } from './tagLabel.ts';

const code = { modules: 2, dark: [true, false, false, true] };
const about = { tag: '41', number: '0217', title: 'Runner', workshop: 'Fern Lane', code };

test('a label says tag, dossier and rug, and draws each dark module once', () => {
  const svg = tagLabel(about);
  for (const words of ['>41<', '>Dossier 0217<', '>Runner<', '>Fern Lane<']) expect(svg).toContain(words);
  expect(svg.match(/h[\d.]+v[\d.]+h-[\d.]+z/g)).toHaveLength(2);
});

test('a long title is cut, a long tag is set smaller, and nothing typed becomes markup', () => {
  const svg = tagLabel({ ...about, tag: 'ABC-1234-XYZ', title: `<b>${'medallion '.repeat(9)}` });
  expect(svg).toContain('&lt;b&gt;medallion');
  expect(svg).toContain('…<');
  const size = (text: string): number => Number(/font-size="([\d.]+)"[^>]*>(?:41|ABC)/.exec(text)?.[1]);
  expect(size(svg)).toBeLessThan(size(tagLabel(about)));
});
