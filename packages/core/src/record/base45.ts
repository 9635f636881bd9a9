// Bytes as text of the 45 characters that a QR code packs best: RFC 9285, Base45.

const DIGITS = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:';

/** The text of the bytes: three characters for two bytes, two for the last one. */
export function toBase45(bytes: Uint8Array): string {
  let text = '';
  for (let i = 0; i < bytes.length; i += 2) {
    const pair = i + 1 < bytes.length;
    let n = pair ? (bytes[i] as number) * 256 + (bytes[i + 1] as number) : (bytes[i] as number);
    for (let k = pair ? 3 : 2; k > 0; k--) {
      text += DIGITS[n % 45];
      n = Math.floor(n / 45);
    }
  }
  return text;
}

/** The bytes of the text; null where it is the text of none. */
export function fromBase45(text: string): Uint8Array | null {
  if (text.length % 3 === 1) return null;
  const bytes = new Uint8Array(Math.floor(text.length / 3) * 2 + (text.length % 3 === 2 ? 1 : 0));
  for (let i = 0, at = 0; i < text.length; i += 3) {
    const digits = [...text.slice(i, i + 3)].map((one) => DIGITS.indexOf(one));
    if (digits.some((digit) => digit < 0)) return null;
    const n = digits.reduceRight((sum, digit) => sum * 45 + digit, 0);
    const whole = digits.length === 3;
    if (n >= (whole ? 65536 : 256)) return null;
    if (whole) bytes[at++] = n >> 8;
    bytes[at++] = n & 255;
  }
  return bytes;
}
