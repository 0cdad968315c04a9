import { Hono } from 'hono';
import { exportRug } from '../app/exportRug.ts';
import type { House } from '../app/house.ts';
import { printLabel, printPaper, printReceipt, showConsent } from '../app/papers.ts';
import { paperKinds } from '../papers/index.ts';
import type { Result } from '../units/index.ts';
import { answerOf, pdfAnswer, problemAnswer, zipAnswer } from './answers.ts';
import type { Guarded } from './guard.ts';

const asPdf = (printed: Result<Uint8Array>, name: string): Response =>
  printed.ok ? pdfAnswer(new Uint8Array(printed.value), name) : problemAnswer(printed.problem);

/** Papers as PDF, labels, and a whole dossier as an archive. */
export function paperRoutes(house: House) {
  const routes = new Hono<Guarded>();

  routes.get('/rugs/:rug/papers/:kind/hash', async (route) => {
    const { rug, kind } = route.req.param();
    if (kind !== 'consent') {
      return problemAnswer({ code: 'paper-unknown', facts: { paper: kind, known: ['consent'] } });
    }
    return answerOf(await showConsent(house, route.get('actor'), rug), ({ sha256 }) => ({ sha256 }));
  });

  routes.get('/rugs/:rug/papers/:file', async (route) => {
    const { rug, file } = route.req.param();
    const kind = paperKinds.find(({ code }) => `${code}.pdf` === file)?.code;
    if (kind === undefined) {
      const known = paperKinds.map(({ code }) => code);
      return problemAnswer({ code: 'paper-unknown', facts: { paper: file.replace(/\.pdf$/, ''), known } });
    }
    if (kind !== 'consent') return asPdf(await printPaper(house, route.get('actor'), rug, kind), kind);
    const shown = await showConsent(house, route.get('actor'), rug);
    return shown.ok ? pdfAnswer(new Uint8Array(shown.value.bytes), kind) : problemAnswer(shown.problem);
  });

  routes.get('/consignments/:consignment/receipt.pdf', async (route) =>
    asPdf(await printReceipt(house, route.get('actor'), route.req.param('consignment')), 'receipt'),
  );

  routes.get('/rugs/:rug/label.pdf', async (route) => {
    const { protocol, host } = new URL(route.req.url);
    const label = await printLabel(house, route.get('actor'), route.req.param('rug'), `${protocol}//${host}`);
    return asPdf(label, 'label');
  });

  routes.get('/rugs/:rug/export.zip', async (route) => {
    const exported = await exportRug(house, route.get('actor'), route.req.param('rug'));
    return exported.ok
      ? zipAnswer(ReadableStream.from(exported.value.bytes), exported.value.name)
      : problemAnswer(exported.problem);
  });
  return routes;
}
