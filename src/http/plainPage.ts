/** Text made safe to stand inside a page. */
export const escaped = (text: string): string =>
  text.replace(/[&<>"']/g, (letter) => `&#${letter.charCodeAt(0)};`);

const style = `
  body { margin: 0 auto; padding: 2rem 1.25rem; max-width: 40rem; font: 1.125rem/1.6 system-ui, sans-serif;
    background: #f7f1e6; color: #2b2622 }
  h1 { font: 600 1.6rem/1.3 Georgia, serif }
  a { color: #2f4d73; display: inline-block; min-height: 48px; line-height: 48px }
  dt { font-weight: 600 } dd { margin: 0 0 .75rem } code { overflow-wrap: anywhere }
  @media (prefers-color-scheme: dark) { body { background: #211d1a; color: #efe6d8 } a { color: #a9c3e6 } }`;

/** A page that needs nothing of the screens, so that it can also be shown where those are missing. */
export const plainPage = (title: string, body: string, nonce: string): string => `<!doctype html>
<html lang="en">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(title)}</title><style nonce="${nonce}">${style}</style></head>
<body><main>${body}<p><a href="/">To Wefthouse</a></p></main></body>
</html>
`;
