import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { readPdf } from '../../../test/support/readPdf.ts';
import type { Paper, PaperPart } from '../../papers/paper.ts';
import type { Photos } from '../../ports/photos.ts';
import { makePrinter } from './makePrinter.ts';
import { takeTurns } from './takeTurns.ts';
import { typeset } from './typeset.ts';

const photo = 'a'.repeat(64);
const picture = await sharp({ create: { width: 90, height: 120, channels: 3, background: '#8f2f22' } })
  .jpeg()
  .toBuffer();
const photos: Photos = {
  keep: () => Promise.reject(new Error('nothing is kept here')),
  read: async (name) => (name === photo ? { bytes: picture, mediaType: 'image/jpeg' } : null),
  describe: async (name) =>
    name === photo
      ? { photo, mediaType: 'image/jpeg', widthPx: 90, heightPx: 120, bytes: picture.length }
      : null,
};

const paperOf = (parts: readonly PaperPart[], changes: Partial<Paper> = {}): Paper => ({
  title: 'Condition report',
  size: 'a4',
  workshop: { name: 'Larkfield Rug Workshop', lines: ['14 Mill Lane'] },
  number: 'CR-7',
  rug: 'Dossier 0007 · tag 41',
  date: '25 November 2026',
  issuedAt: '2026-11-25T11:05:00.000Z',
  person: 'Mirela Oprea',
  language: 'en',
  seal: '9f2c'.repeat(16),
  parts,
  ...changes,
});

const printed = async (paper: Paper) => {
  const outcome = await makePrinter(photos).print(paper);
  if (!outcome.ok) throw new Error(outcome.problem.facts.reason);
  return readPdf(outcome.value);
};
const everyPart: readonly PaperPart[] = [
  { kind: 'contents' },
  { kind: 'heading', level: 1, text: 'What was received' },
  { kind: 'text', text: 'Two paragraphs.\nSecond one.', tone: 'lead' },
  { kind: 'notice', tone: 'stop', title: 'No wet step yet', lines: ['One colour is untested.'] },
  { kind: 'facts', rows: [{ name: 'Client', value: 'علی رضایی', why: 'by telephone' }] },
  { kind: 'list', items: ['gloves', 'goggles'], ordered: true },
  {
    kind: 'table',
    caption: 'Marks',
    columns: [{ name: 'No.', align: 'end' }, { name: 'Word' }],
    rows: [['1', 'low pile']],
  },
  {
    kind: 'picture',
    photo,
    caption: 'Face',
    marks: [
      { label: '1', shape: 'point', points: [[0.5, 0.5]] },
      {
        label: '2',
        shape: 'line',
        points: [
          [0.1, 0.1],
          [0.4, 0.2],
        ],
      },
      {
        label: '3',
        shape: 'polygon',
        points: [
          [0.6, 0.6],
          [0.9, 0.6],
          [0.9, 0.9],
        ],
      },
    ],
  },
  {
    kind: 'pictures',
    across: 2,
    pictures: [
      { photo, caption: 'Back' },
      { photo: 'b'.repeat(64), caption: 'Lost' },
    ],
  },
  {
    kind: 'drawing',
    svg: '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><rect width="9" height="9"/></svg>',
    caption: 'A drawing',
    described: 'a dark square',
    widthMm: 30,
  },
  {
    kind: 'signature',
    statement: 'I agree.',
    name: 'Ana Berg',
    at: '25 November 2026',
    strokes: [
      [
        [0.1, 0.5],
        [0.9, 0.4],
      ],
      [[0.5, 0.5]],
    ],
  },
  { kind: 'page-break' },
  { kind: 'signature', statement: 'I agree.', name: 'Ana Berg', at: '25 November 2026', strokes: [] },
];

describe('a printed paper', () => {
  test('holds every kind of part, is tagged for screen readers and carries its own fonts', async () => {
    const pdf = await printed(paperOf(everyPart));
    expect(pdf).toMatchObject({ tagged: true, accessible: true });
    expect(pdf.fonts).toEqual(expect.arrayContaining(['SourceSerif4-SemiBold', 'Vazirmatn-Regular']));
    expect(pdf.plain).toContain('/Alt (a dark square)');
    const words = pdf.words.join('');
    for (const text of [
      'What was received',
      'Second one.',
      'Stop: \nNo wet step yet',
      'low pile',
      'bytes are missing',
      'I agree.',
    ])
      expect(words).toContain(text);
  });

  test('names workshop, number, rug, date, person, page and last seal on every page', async () => {
    const note = Array.from(
      { length: 60 },
      (_, at) => `Paragraph ${at}: ${'worn pile and a thin edge '.repeat(8)}`,
    );
    const pdf = await printed(paperOf([{ kind: 'text', text: note.join('\n') }]));
    expect(pdf.pages).toBeGreaterThan(1);
    pdf.words.forEach((words, at) => {
      for (const text of [
        'Larkfield Rug Workshop',
        'CR-7',
        'Dossier 0007 · tag 41',
        '25 November 2026',
        'Mirela Oprea',
        '9f2c'.repeat(16),
      ])
        expect(words).toContain(text);
      expect(words).toContain(`page ${at + 1} of ${pdf.pages}`);
    });
  });

  test('repeats the head of a table on every page it reaches', async () => {
    const rows = Array.from({ length: 90 }, (_, at) => [String(at + 1), 'moth grazing']);
    const pdf = await printed(
      paperOf([{ kind: 'table', columns: [{ name: 'Mark number' }, { name: 'Word' }], rows }]),
    );
    expect(pdf.pages).toBeGreaterThan(1);
    for (const words of pdf.words) expect(words).toContain('Mark number');
  });

  test('prints what a person typed as it was typed, never as instructions', async () => {
    const typed = '#panic("x") #import "a.typ" $x^2$ *bold* @ref <label> \\ // `raw` </svg>';
    const pdf = await printed(
      paperOf([
        { kind: 'text', text: typed },
        { kind: 'facts', rows: [{ name: typed, value: typed }] },
      ]),
    );
    expect(pdf.words.join('').replaceAll('\n', '')).toContain(typed);
  });

  test('prints Persian names with the Persian letters, and letters no font holds by their number', async () => {
    const pdf = await printed(
      paperOf([
        { kind: 'text', text: 'علی' },
        { kind: 'text', text: 'x\u{F0000}y\u0001z not\u202e turned' },
      ]),
    );
    // Drawn from the left, as they stand on the line.
    expect(pdf.words.join('')).toContain('یلع');
    expect(pdf.words.join('')).toContain('x[U+F0000]y[U+0001]z');
    expect(pdf.words.join('')).toContain('not[U+202E] turned');
    expect(pdf.accessible).toBe(true);
  });

  test('comes out the same to the byte when it is printed again', async () => {
    const printer = makePrinter(photos);
    const [first, second] = await Promise.all([
      printer.print(paperOf(everyPart)),
      printer.print(paperOf(everyPart)),
    ]);
    expect(first.ok && second.ok && Buffer.from(first.value).equals(Buffer.from(second.value))).toBe(true);
  });

  test('fits the size of paper the workshop uses', async () => {
    const pdf = await printed(paperOf([], { size: 'letter' }));
    expect(pdf.plain).toMatch(/\/MediaBox \[0 0 612 792\]/);
  });
});

describe('a paper that cannot be printed', () => {
  test('is refused with the typesetter’s reason when the drawing in it is none', async () => {
    const broken = paperOf([
      { kind: 'drawing', svg: '<not a drawing', caption: '', described: '', widthMm: 10 },
    ]);
    const outcome = await makePrinter(photos).print(broken);
    expect(outcome).toMatchObject({
      ok: false,
      problem: { code: 'paper-not-printed', facts: { cause: 'failed' } },
    });
  });

  test('is given up when it takes too long, and the next one still prints', async () => {
    const outcome = await makePrinter(photos, { patienceMs: 1 }).print(paperOf(everyPart));
    expect(outcome).toMatchObject({ ok: false, problem: { facts: { cause: 'too-long' } } });
    expect((await printed(paperOf([]))).pages).toBe(1);
  });

  test('is stopped even when the typesetter itself would never end', async () => {
    const endless = '#for a in range(9999) { for b in range(9999) { for c in range(9999) { let d = c } } }';
    const job = { data: '{}', photos: [], createdAtSeconds: 0, patienceMs: 1500 };
    const outcome = await typeset({ ...job, template: endless });
    expect(outcome).toMatchObject({ ok: false, cause: 'too-long' });
  });
});

test('only so many papers are typeset at once, and a failure frees its place', async () => {
  const inTurn = takeTurns(2);
  let running = 0;
  let most = 0;
  const work = (fails: boolean) =>
    inTurn(async () => {
      running += 1;
      most = Math.max(most, running);
      await new Promise((goOn) => setTimeout(goOn, 2));
      running -= 1;
      if (fails) throw new Error('fell over');
      return 'done';
    });
  const outcomes = await Promise.allSettled([true, false, false, true, false, false].map(work));
  expect(most).toBe(2);
  expect(outcomes.filter(({ status }) => status === 'fulfilled')).toHaveLength(4);
});
