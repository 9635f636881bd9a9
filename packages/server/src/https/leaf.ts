// The certificate that the server shows: for this computer's addresses and names of the moment, signed
// by the laptop's root, and for a week only. Its key is never written anywhere.

import { hostname } from 'node:os';
import { isPrivate, lanAddresses } from '../lan.ts';
import { ALGORITHM, newKeys, newSerial, pem, type Root } from './root.ts';
import { x509 } from './x509.ts';

const DAY = 24 * 3600 * 1000;
const LEAF_AGE = 7 * DAY;

/** A certificate with its key, as PEM. */
export interface Leaf {
  readonly names: readonly string[];
  readonly key: string;
  readonly cert: string;
  /** Milliseconds since 1970. */
  readonly made: number;
}

/** The names and addresses by which phones may call this computer. */
export const ownNames = (): readonly string[] => [
  'localhost',
  '127.0.0.1',
  ...localName(hostname()),
  ...lanAddresses().filter(isPrivate),
];

/** `name.local`, by which phones find a computer on their network; nothing where the name has signs
 * that such names have not. */
function localName(host: string): readonly string[] {
  const label = host.split('.', 1)[0]?.toLowerCase() ?? '';
  return /^[a-z\d]([a-z\d-]{0,61}[a-z\d])?$/.test(label) && label !== 'localhost'
    ? [`${label}.local`]
    : [];
}

/** A new certificate for some names and IPv4 addresses. `now` in milliseconds since 1970. */
export async function makeLeaf(root: Root, names: readonly string[], now: number): Promise<Leaf> {
  const keys = await newKeys();
  const certificate = await x509.X509CertificateGenerator.create({
    serialNumber: newSerial(),
    subject: [{ CN: ['Shellraise'] }],
    issuer: root.certificate.subject,
    notBefore: new Date(now - DAY),
    notAfter: new Date(Math.min(now + LEAF_AGE, root.certificate.notAfter.getTime())),
    signingAlgorithm: ALGORITHM,
    publicKey: keys.publicKey as never,
    signingKey: root.key as never,
    extensions: [
      new x509.BasicConstraintsExtension(false, undefined, true),
      new x509.KeyUsagesExtension(x509.KeyUsageFlags.digitalSignature, true),
      new x509.ExtendedKeyUsageExtension([x509.ExtendedKeyUsage.serverAuth]),
      new x509.SubjectAlternativeNameExtension(
        names.map((value) => ({ type: /^[\d.]+$/.test(value) ? 'ip' : 'dns', value })),
      ),
      await x509.AuthorityKeyIdentifierExtension.create(root.certificate.publicKey),
    ],
  });
  const { subtle } = globalThis.crypto;
  const key = await subtle.exportKey('pkcs8', keys.privateKey as never);
  return { names, key: pem(key, 'PRIVATE KEY'), cert: certificate.toString('pem'), made: now };
}

/** Whether a certificate no longer fits: other addresses than then, or a day old. */
export const isStale = (leaf: Leaf, names: readonly string[], now: number): boolean =>
  now - leaf.made > DAY || names.join() !== leaf.names.join();
