import { escaped, plainPage } from './plainPage.ts';

const steps: readonly (readonly [device: string, steps: string])[] = [
  [
    'iPad, iPhone',
    'Open the certificate; the device says a profile was loaded. Settings → General → VPN & Device Management → install it. Then Settings → General → About → Certificate Trust Settings → switch it on.',
  ],
  [
    'Android',
    'Settings → Security → More security settings → Install a certificate → CA certificate → choose the file.',
  ],
  [
    'Windows',
    'Open the file → Install certificate → Local machine → Place in “Trusted Root Certification Authorities”.',
  ],
  ['macOS', 'Open the file so that it lands in Keychain Access; open it there → Trust → Always trust.'],
  ['Linux', 'In the browser’s settings, Certificates → Authorities → Import → trust it for web sites.'],
];

/** How a device is told to trust the workshop's own authority. */
export const trustPage = (fingerprint: string, nonce: string): string =>
  plainPage(
    'Trust this workshop’s server',
    `<h1>Trust this workshop’s server</h1>
<p>Passphrases and the camera need an encrypted connection. This server vouches for itself; a device believes
it once it holds the workshop’s own certificate. The certificate can vouch for private addresses and this
machine’s names only, never for sites on the internet.</p>
<ol>
<li>Compare this fingerprint with the one in the server’s terminal, letter by letter:<br><code>${escaped(fingerprint)}</code></li>
<li><a href="/trust/authority.crt">Take the certificate</a>.</li>
<li>Install it:
<dl>${steps.map(([device, words]) => `<dt>${escaped(device)}</dt><dd>${escaped(words)}</dd>`).join('\n')}</dl></li>
<li>Load the first page anew.</li>
</ol>
<p>The names in a device’s settings change with its version; look for “install certificate” there.</p>`,
    nonce,
  );
