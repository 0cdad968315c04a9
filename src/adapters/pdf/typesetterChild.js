// Typesets one paper in a process of its own and ends. It is handed to a fresh Node process as text, so
// that it needs no file beside the server; the only thing it loads is the compiler, by the address it is given.
import { readFileSync } from 'node:fs';

const root = '/wefthouse-paper';

// What the compiler says of each letter that no font at hand can show, or that a PDF must not hold.
const complaint = /the text (?:contains the disallowed codepoint )?`\\?"(.+?)\\?"`/g;
const unshowable = (message) =>
  Array.from(message.matchAll(complaint), ([, quoted]) => {
    const code = /^\\+u\{([0-9a-f]+)\}$/i.exec(quoted);
    return code === null ? quoted : String.fromCodePoint(Number.parseInt(code[1], 16));
  }).flatMap((text) => Array.from(text));

// Letters that would be lost are printed by their number instead, so that a reader sees what stood there.
const spellOut = (data, letters) => {
  const spelt = (text) =>
    Array.from(text, (letter) =>
      letters.has(letter)
        ? `[U+${letter.codePointAt(0).toString(16).toUpperCase().padStart(4, '0')}]`
        : letter,
    ).join('');
  return JSON.stringify(JSON.parse(data), (_key, value) =>
    typeof value === 'string' ? spelt(value) : value,
  );
};

// The most memory held since this programme began; the usual count would still hold the server's at the fork.
const peakKiB = () => {
  try {
    return Number(/^VmHWM:\s+(\d+)/m.exec(readFileSync('/proc/self/status', 'utf8'))[1]);
  } catch {
    return process.resourceUsage().maxRSS;
  }
};

process.once('message', async ({ compilerUrl, fontPaths, template, data, photos, createdAtSeconds }) => {
  const { NodeCompiler } = (await import(compilerUrl)).default;
  const compiler = NodeCompiler.create({ workspace: root, fontArgs: [{ fontPaths }] });
  for (const { path, bytes } of photos) compiler.mapShadow(root + path, Buffer.from(bytes));
  const print = (text, pdfStandard) => {
    compiler.mapShadow(`${root}/paper.json`, Buffer.from(text));
    const compiled = compiler.compile({ mainFileContent: template });
    if (compiled.result === null) {
      throw new Error(JSON.stringify(compiled.takeDiagnostics()?.shortDiagnostics ?? 'no diagnosis'));
    }
    return compiler.pdf(compiled.result, { pdfStandard, creationTimestamp: createdAtSeconds });
  };
  let bytes;
  try {
    bytes = print(data, 'ua-1');
  } catch (error) {
    const letters = new Set(unshowable(String(error)));
    if (letters.size === 0) throw error;
    bytes = print(spellOut(data, letters), 'ua-1');
  }
  process.send({ bytes, peakKiB: peakKiB() }, () => process.exit(0));
});
