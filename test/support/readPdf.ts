import { inflateSync } from 'node:zlib';

/** What a test needs to know of a PDF this project printed, read from its bytes without outside programs. */
export interface ReadPdf {
  readonly pages: number;
  readonly tagged: boolean;
  /** Claims the accessibility standard PDF/UA-1 in its metadata. */
  readonly accessible: boolean;
  /** Names of the embedded fonts, without their subset mark. */
  readonly fonts: readonly string[];
  /** What is written on each page, in the order it was drawn; spaces as drawn. */
  readonly words: readonly string[];
  /** All that is not compressed, with what could be inflated. */
  readonly plain: string;
}

const objectsOf = (pdf: string): ReadonlyMap<string, string> =>
  new Map(
    Array.from(pdf.matchAll(/(?<=^|\n)(\d+) 0 obj\n([\s\S]*?)endobj/g), ([, id = '', body = '']) => [
      id,
      body,
    ]),
  );

const streamOf = (body: string | undefined): string => {
  const raw = body?.match(/stream\r?\n([\s\S]*?)\r?\nendstream/)?.[1] ?? '';
  if (!/\/FlateDecode/.test(body ?? '')) return raw;
  return inflateSync(Buffer.from(raw, 'latin1')).toString('latin1');
};

const lettersOf = (cmap: string): ReadonlyMap<number, string> =>
  new Map(
    Array.from(cmap.matchAll(/^<([0-9A-F]{4})> <([0-9A-F]+)>$/gm), ([, glyph = '', letters = '']) => [
      Number.parseInt(glyph, 16),
      Buffer.from(letters, 'hex').swap16().toString('utf16le'),
    ]),
  );

const controls: Readonly<Record<string, string>> = { n: '\n', r: '\r', t: '\t', b: '\b', f: '\f' };

/** The PDF string that starts at the bracket `from`, its escapes undone, and where it ends. Brackets may nest. */
function stringAt(drawn: string, from: number): { readonly text: string; readonly end: number } {
  let [text, depth, at] = ['', 1, from + 1];
  for (; at < drawn.length; at += 1) {
    const letter = drawn.charAt(at);
    if (letter === '\\') {
      const octal = drawn.slice(at + 1).match(/^[0-7]{1,3}/)?.[0];
      const next = drawn.charAt(at + 1);
      text += octal === undefined ? (controls[next] ?? next) : String.fromCharCode(Number.parseInt(octal, 8));
      at += octal?.length ?? 1;
      continue;
    }
    if (letter === '(') depth += 1;
    if (letter === ')') depth -= 1;
    if (depth === 0) break;
    text += letter;
  }
  return { text, end: at };
}

/** What a page's drawing orders write, a new line for each run of letters. */
function writtenBy(drawn: string, fonts: ReadonlyMap<string, ReadonlyMap<number, string>>): string {
  let [font, text] = [new Map() as ReadonlyMap<number, string>, ''];
  for (let at = 0; at < drawn.length; at += 1) {
    if (drawn.charAt(at) === '(') {
      const { text: codes, end } = stringAt(drawn, at);
      for (let pair = 0; pair + 1 < codes.length; pair += 2)
        text += font.get(codes.charCodeAt(pair) * 256 + codes.charCodeAt(pair + 1)) ?? '';
      at = end;
    } else if (drawn.startsWith('TJ', at)) text += '\n';
    else if (drawn.startsWith('/f', at))
      font = fonts.get(drawn.slice(at + 1).match(/^f\d+/)?.[0] ?? '') ?? font;
  }
  return text;
}

export function readPdf(bytes: Uint8Array): ReadPdf {
  const pdf = Buffer.from(bytes).toString('latin1');
  const objects = objectsOf(pdf);
  const letters = (font: string) =>
    lettersOf(streamOf(objects.get(objects.get(font)?.match(/\/ToUnicode (\d+)/)?.[1] ?? '')));
  const pages = [...objects.values()].filter((body) => /\/Type \/Page\b/.test(body));
  const words = pages.map((page) => {
    const resources = page.match(/\/Font <<([\s\S]*?)>>/)?.[1] ?? '';
    const fonts = new Map(
      Array.from(resources.matchAll(/\/(f\d+) (\d+) 0 R/g), ([, name = '', id = '']) => [name, letters(id)]),
    );
    return writtenBy(streamOf(objects.get(page.match(/\/Contents (\d+)/)?.[1] ?? '')), fonts);
  });
  return {
    pages: pages.length,
    tagged: /\/MarkInfo <<\s*\/Marked true/.test(pdf),
    accessible: /<pdfuaid:part>1</.test(pdf),
    fonts: Array.from(pdf.matchAll(/\/FontName \/[A-Z]{6}\+(\S+)/g), ([, name = '']) => name),
    words,
    plain: pdf,
  };
}
