// The addresses under which other devices find this computer, and the picture of one that a phone's
// camera reads.

import { networkInterfaces } from 'node:os';
import { generate } from 'lean-qr';

/** A network card, as the system lists it. */
export interface Card {
  readonly family: string;
  readonly address: string;
  readonly internal: boolean;
}

/** This computer's IPv4 addresses on its networks, home networks first, those that a card gave
 * itself for want of an answer (169.254…) last. */
export function lanAddresses(
  cards: Readonly<Record<string, readonly Card[] | undefined>> = networkInterfaces(),
): readonly string[] {
  return Object.values(cards)
    .flatMap((list) => list ?? [])
    .filter(({ family, internal }) => family === 'IPv4' && !internal)
    .map(({ address }) => address)
    .sort((a, b) => rank(a) - rank(b));
}

/** Whether an IPv4 address is one of loopback, private or self-given networks, for which alone a laptop's
 * own certificate is. */
export const isPrivate = (address: string): boolean =>
  /^(10|127)\.|^192\.168\.|^169\.254\.|^172\.(1[6-9]|2\d|3[01])\./.test(address);

function rank(address: string): number {
  if (address.startsWith('192.168.')) return 0;
  if (address.startsWith('10.')) return 1;
  return address.startsWith('169.254.') ? 3 : 2;
}

/** A QR code of a text in half blocks, one line for two rows of it, with the white border it needs.
 * With `colour` it is black on white whatever the terminal's colours; without, light ink on a dark
 * ground is assumed. */
export function qrLines(text: string, colour: boolean): readonly string[] {
  const code = generate(text);
  const border = 2;
  const lines: string[] = [];
  for (let y = -border; y < code.size + border; y += 2) {
    let line = '';
    for (let x = -border; x < code.size + border; x++)
      line += block(code.get(x, y), code.get(x, y + 1));
    lines.push(colour ? `\u001b[40;97m${line}\u001b[0m` : line);
  }
  return lines;
}

/** Ink is what is light: a dark module is left empty. */
function block(upperDark: boolean, lowerDark: boolean): string {
  if (upperDark) return lowerDark ? ' ' : '▄';
  return lowerDark ? '▀' : '█';
}
