// The laptop's own root certificate: made once, on this computer, for phones that are asked to trust it.
// What it may vouch for is bound into it (RFC 5280, 4.2.1.10): addresses of private networks and names
// that end in `.local`, so that whoever gets hold of its key cannot pose as a site on the web towards a
// phone that heeds such bounds. Key and certificate lie in one file that only its owner may read; what
// is there is never written over unless somebody asks for a new one.

import { createHash, webcrypto } from 'node:crypto';
import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readFileSync,
  renameSync,
  statSync,
  writeSync,
} from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { AsnConvert } from '@peculiar/asn1-schema';
import {
  GeneralName,
  GeneralSubtree,
  GeneralSubtrees,
  id_ce_nameConstraints,
  NameConstraints,
} from '@peculiar/asn1-x509';
import { RootUnusable } from './unusable.ts';
import { x509 } from './x509.ts';

/** Kind of every key and signature here. */
export const ALGORITHM = { name: 'ECDSA', namedCurve: 'P-256', hash: 'SHA-256' } as const;

/** Names that a root vouches for, with all that end in them. */
const ROOT_NAMES = ['localhost', 'local'] as const;

/** Networks that a root vouches for: loopback, private (RFC 1918) and self-given (RFC 3927). */
const ROOT_NETWORKS = [
  '127.0.0.0/8',
  '10.0.0.0/8',
  '172.16.0.0/12',
  '192.168.0.0/16',
  '169.254.0.0/16',
] as const;

/** How long a root holds, milliseconds: three years. */
const ROOT_AGE = 3 * 365 * 24 * 3600 * 1000;

/** A root certificate with its key. */
export interface Root {
  readonly certificate: x509.X509Certificate;
  readonly key: webcrypto.CryptoKey;
  /** SHA-256 of the certificate, in pairs of hexadecimal digits, as phones show it. */
  readonly fingerprint: string;
}

/** Where a folder's root lies. */
export const rootFile = (folder: string): string => join(folder, 'https', 'root.pem');

/** The folder's root, made where there is none, or anew where that is asked for (the former one stays
 * beside it, as `.previous`). `now` in milliseconds since 1970. Throws `RootUnusable`. */
export async function openRoot(folder: string, now: number, anew = false): Promise<Root> {
  const file = rootFile(folder);
  if (anew && existsSync(file)) renameSync(file, `${file}.previous`);
  if (!existsSync(file)) await makeRoot(folder, now);
  if (process.platform !== 'win32' && (statSync(file).mode & 0o077) !== 0)
    throw new RootUnusable(file, 'may be read by others: expected mode 600');
  const text = readFileSync(file, 'utf8');
  try {
    return await readRoot(file, text, now);
  } catch (error) {
    if (error instanceof RootUnusable) throw error;
    throw new RootUnusable(file, 'holds no root certificate with its key');
  }
}

async function readRoot(file: string, text: string, now: number): Promise<Root> {
  const [key, certificate] = [part(text, 'PRIVATE KEY'), part(text, 'CERTIFICATE')];
  const read = new x509.X509Certificate(certificate);
  const keys = await webcrypto.subtle.importKey(
    'pkcs8',
    x509.PemConverter.decodeFirst(key),
    ALGORITHM,
    true,
    ['sign'],
  );
  if (!(await read.verify({ signatureOnly: true })) || !(await isPair(keys, read)))
    throw new RootUnusable(file, 'holds a certificate that is not its key’s own, or damaged');
  if (read.notAfter.getTime() < now)
    throw new RootUnusable(file, `held until ${read.notAfter.toISOString().slice(0, 10)}`);
  const fingerprint = createHash('sha256').update(new Uint8Array(read.rawData)).digest('hex');
  return {
    certificate: read,
    key: keys,
    fingerprint: (fingerprint.toUpperCase().match(/../g) ?? []).join(':'),
  };
}

/** Whether what a key signs is good to a certificate. */
async function isPair(key: webcrypto.CryptoKey, to: x509.X509Certificate): Promise<boolean> {
  const [algorithm, data] = [{ ...ALGORITHM }, new Uint8Array(32)];
  const signed = await webcrypto.subtle.sign(algorithm, key, data);
  const open = (await to.publicKey.export(algorithm, ['verify'])) as webcrypto.CryptoKey;
  return webcrypto.subtle.verify(algorithm, open, signed, data);
}

function part(text: string, name: string): string {
  const found = new RegExp(`-----BEGIN ${name}-----[^-]+-----END ${name}-----`).exec(text);
  if (!found) throw new Error(`no ${name}`);
  return found[0];
}

async function makeRoot(folder: string, now: number): Promise<void> {
  const keys = await newKeys();
  const day = new Date(now).toISOString().slice(0, 10);
  const certificate = await x509.X509CertificateGenerator.createSelfSigned({
    serialNumber: newSerial(),
    name: [{ CN: [`Shellraise on ${hostname().replace(/[^\w.-]/g, '')}, ${day}`] }],
    notBefore: new Date(now - 24 * 3600 * 1000),
    notAfter: new Date(now + ROOT_AGE),
    signingAlgorithm: ALGORITHM,
    keys: keys as never,
    extensions: [
      new x509.BasicConstraintsExtension(true, 0, true),
      new x509.KeyUsagesExtension(x509.KeyUsageFlags.keyCertSign, true),
      new x509.ExtendedKeyUsageExtension([x509.ExtendedKeyUsage.serverAuth]),
      new x509.Extension(id_ce_nameConstraints, true, bounds()),
      await x509.SubjectKeyIdentifierExtension.create(keys.publicKey as never),
    ],
  });
  const text = `${pem(await webcrypto.subtle.exportKey('pkcs8', keys.privateKey), 'PRIVATE KEY')}\n${certificate.toString('pem')}\n`;
  mkdirSync(join(folder, 'https'), { recursive: true, mode: 0o700 });
  // `wx`: where another process was faster, its root stays.
  const file = openSync(rootFile(folder), 'wx', 0o600);
  writeSync(file, text);
  fsyncSync(file);
  closeSync(file);
}

/** What the root may vouch for, as its extension says it. */
function bounds(): ArrayBuffer {
  const names = [
    ...ROOT_NAMES.map((dNSName) => new GeneralName({ dNSName })),
    ...ROOT_NETWORKS.map((iPAddress) => new GeneralName({ iPAddress })),
  ];
  const permitted = names.map((base) => new GeneralSubtree({ base }));
  return AsnConvert.serialize(
    new NameConstraints({ permittedSubtrees: new GeneralSubtrees(permitted) }),
  ) as ArrayBuffer;
}

/** New keys for a certificate. */
export const newKeys = (): Promise<webcrypto.CryptoKeyPair> =>
  webcrypto.subtle.generateKey(ALGORITHM, true, ['sign', 'verify']);

/** A serial number of 127 random bits, in hexadecimal digits. */
export function newSerial(): string {
  const bytes = webcrypto.getRandomValues(new Uint8Array(16));
  bytes[0] = ((bytes[0] as number) & 0x7f) | 0x40;
  return Buffer.from(bytes).toString('hex');
}

/** Bytes as PEM. */
export const pem = (bytes: ArrayBuffer, name: string): string =>
  x509.PemConverter.encode(bytes as never, name);
