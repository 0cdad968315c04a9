import sharp from 'sharp';
import { beforeAll, describe, expect, test } from 'vitest';
import { drawLoomPicture, seeded } from '../../bench/loom/index.ts';
import { weaveDesk } from './weaveDesk.ts';

const { files, call } = weaveDesk();

const loom = drawLoomPicture(seeded(11), 16);

beforeAll(async () => {
  files.set(
    'back.jpg',
    await sharp(loom.rgb, { raw: { width: loom.width, height: loom.height, channels: 3 } })
      .jpeg({ quality: 88 })
      .toBuffer(),
  );
  files.set('note.txt', new TextEncoder().encode('no picture'));
});

describe('wefthouse weave', () => {
  test('answers in JSON with pitches, candidates and times, and writes the overlay', async () => {
    const { code, out } = await call(
      'weave',
      'back.jpg',
      '--json',
      '--mm-per-px',
      String(loom.truth.mmPerPx),
      '--nodes-per-knot',
      '1',
      '--overlay',
      'over.png',
    );
    expect(code).toBe(0);
    const answer = JSON.parse(out);
    for (const key of [
      'weftwise',
      'warpwise',
      'angleDeg',
      'density',
      'nodesPerKnot',
      'scale',
      'ms',
      'candidates',
      'basis',
      'notes',
    ])
      expect(answer).toHaveProperty(key);
    expect(answer.scale.from).toBe('given');
    expect(answer.basis).toBe('automatic');
    expect(answer.weftwise.knotsPer7cm).toBeCloseTo(70 / (answer.weftwise.pitchPx * loom.truth.mmPerPx), 6);
    const size = await sharp(files.get('over.png')).metadata();
    expect([size.width, size.height]).toEqual([loom.width, loom.height]);
  });

  test('without card and scale it stays in pixels and says so', async () => {
    const { code, out } = await call('weave', 'back.jpg');
    expect(code).toBe(0);
    expect(out).toContain('No weave card and no scale');
  });

  test('a file that is no picture is refused in the form of refusals', async () => {
    const { code, out } = await call('weave', 'note.txt', '--json');
    expect(code).toBe(1);
    expect(Object.keys(JSON.parse(out).refused)).toEqual(
      expect.arrayContaining(['code', 'happened', 'matters', 'now']),
    );
  });

  test.each([
    [['weave']],
    [['weave', 'missing.jpg']],
    [['weave', 'back.jpg', '--window', '1,2,3']],
    [['weave', 'back.jpg', '--taps', '1,2,3,4']],
    [['weave', 'back.jpg', '--nodes-per-knot', '3']],
    [['weave', 'back.jpg', '--mm-per-px', 'wide']],
    [['card']],
    [['card', '--out', 'c.pdf', '--paper', 'a3']],
  ])('the call %j does not fit the form', async (args) => {
    expect((await call(...args)).code).toBe(2);
  });

  test('a scale nobody could have is refused', async () => {
    expect((await call('weave', 'back.jpg', '--mm-per-px', '9')).code).toBe(1);
  });
});

describe('wefthouse card', () => {
  test('draws loose pieces as well, and says of a photograph without a card that there is none', async () => {
    const loose = await call('card', '--out', 'loose.pdf', '--form', 'loose', '--json');
    expect(JSON.parse(loose.out)).toMatchObject({ form: 'loose', paper: 'a4' });
    expect(files.get('loose.pdf')?.length).toBeGreaterThan(5000);
    expect((await call('card', '--out', 'x.pdf', '--form', 'round')).code).toBe(2);
    const none = await call('card', '--read', 'back.jpg', '--json');
    expect(none.code).toBe(1);
    expect(JSON.parse(none.out).refused.code).toBe('card-not-found');
  });

  test('writes a PDF and names the serial', async () => {
    const { code, out } = await call('card', '--out', 'card.pdf', '--tag', 'R-0417', '--json');
    expect(code).toBe(0);
    expect(JSON.parse(out).serial).toMatch(/^[0-9A-Z]{6}$/);
    expect(new TextDecoder().decode(files.get('card.pdf')?.slice(0, 5))).toBe('%PDF-');
  });
});
