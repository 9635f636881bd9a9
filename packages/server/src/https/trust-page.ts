// The page from which a phone gets the laptop's root certificate, with what to tap on each kind of phone,
// and how to take it away again. docs/https.md says the same at more length.

/** What the page tells. */
export interface TrustPage {
  /** Path of the certificate. */
  readonly certificate: string;
  /** The name under which phones list it. */
  readonly name: string;
  readonly fingerprint: string;
  /** Address of the app over https. */
  readonly secure: string;
}

/** The page. */
export const trustPage = ({ certificate, name, fingerprint, secure }: TrustPage): string => {
  const [called, print] = [escaped(name), escaped(fingerprint)];
  return `<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Shellraise: trust this laptop</title>
<style>
  body { font: 18px/1.5 sans-serif; color: #000; background: #fff; max-width: 40em; margin: 0 auto; padding: 1em; }
  a.go { display: block; border: 2px solid; padding: 1em; margin: 1em 0; color: #000; font-weight: bold; }
  code { word-break: break-all; }
  .caution { border-left: 6px solid; padding-left: 1em; }
</style>
<main>
<h1>Trust this laptop, once</h1>
<p>So that this phone can keep the app and work with no network, it has to know this laptop. Get its
certificate, trust it, then open the app.</p>
<p class="caution"><strong>Caution.</strong> Trusting it means that this phone believes whoever holds this
laptop’s key when it poses as a computer on a private network. It cannot vouch for sites on the web, on
phones that heed its bounds. Only go on if you know whose laptop this is, and <strong>compare the
fingerprint</strong> with the one on the laptop’s screen: on an open network somebody could have put
another in its place. Take it away again when the weekend is over.</p>
<p>Name: ${called}<br>Fingerprint (SHA-256): <code>${print}</code></p>
<a class="go" href="${escaped(certificate)}">1. Get the certificate</a>
<h2>2. Trust it</h2>
<h3>iPhone, iPad</h3>
<p>In Safari: Allow. Then Settings, “Profile Downloaded” (or General, “VPN &amp; Device Management”), Install.
Then Settings, General, About, “Certificate Trust Settings”: switch “${called}” on.</p>
<h3>Android</h3>
<p>Settings, Security (and privacy), more, “Encryption &amp; credentials”, “Install a certificate”, “CA
certificate”, “Install anyway”, and choose the file <code>shellraise-root.crt</code>. Names differ a
little from maker to maker: search the settings for “certificate”.</p>
<p>Firefox on Android takes it only after its own setting “Use third party CA certificates” is on.</p>
<a class="go" href="${escaped(secure)}">3. Open the app: ${escaped(secure)}</a>
<h2>To take it away again</h2>
<p>iPhone, iPad: Settings, General, “VPN &amp; Device Management”, the profile “${called}”, Remove.<br>
Android: Settings, Security, “Encryption &amp; credentials”, “Trusted credentials” (or “User
credentials”), the tab “User”, “${called}”, Remove.</p>
</main>
</html>
`;
};

const SIGNS: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

const escaped = (text: string): string => text.replace(/[&<>"']/g, (sign) => SIGNS[sign] ?? '');
