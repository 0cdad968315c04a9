import { expect, test } from 'vitest';
import { tagCodeOf } from './tagCode.ts';

test('a code with the address of a dossier opens it', () => {
  expect(tagCodeOf('https://workshop.local:8443/rugs/0198b1f2-7c1e-7d2a-9f00-3a5b6c7d8e9f')).toEqual({
    kind: 'rug',
    rug: '0198b1f2-7c1e-7d2a-9f00-3a5b6c7d8e9f',
  });
});

test('a code with a tag alone finds the rug that carries it now', () => {
  expect(tagCodeOf('41')).toEqual({ kind: 'tag', tag: '41' });
  expect(tagCodeOf('http://workshop.local/rugs?tag=A-7')).toEqual({ kind: 'tag', tag: 'A-7' });
});

test('a code of something else is not taken for a tag', () => {
  expect(tagCodeOf('https://example.org/shop/buy-now')).toBeNull();
  expect(tagCodeOf('a whole sentence')).toBeNull();
  expect(tagCodeOf('')).toBeNull();
});
