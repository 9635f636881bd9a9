import { generate } from 'lean-qr';
import { describe, expect, it } from 'vitest';
import { lanAddresses, qrLines } from '../src/lan.ts';

const card = (address: string, family = 'IPv4', internal = false) => ({
  address,
  family,
  internal,
});

describe('the addresses on the network', () => {
  it('leave out loopback and IPv6', () => {
    const cards = { lo: [card('127.0.0.1', 'IPv4', true)], a: [card('fe80::1', 'IPv6')] };
    expect(lanAddresses(cards)).toEqual([]);
  });

  it('begin with the one that a phone at home most likely reaches', () => {
    const cards = {
      a: [card('169.254.3.4'), card('172.17.0.1')],
      b: [card('10.0.0.7')],
      c: [card('192.168.7.9')],
      d: undefined,
    };
    expect(lanAddresses(cards)).toEqual(['192.168.7.9', '10.0.0.7', '172.17.0.1', '169.254.3.4']);
  });

  it('are read from this computer where none are given', () => {
    expect(lanAddresses()).not.toContain('127.0.0.1');
  });
});

describe('the QR code', () => {
  const address = 'http://192.168.7.9:4180/';

  /** The dark modules that the lines show, as a camera would see them on a dark terminal. */
  function modules(lines: readonly string[]): boolean[][] {
    const dark = { ' ': [true, true], '▄': [true, false], '▀': [false, true], '█': [false, false] };
    return lines.flatMap((line) => {
      const pairs = [...line].map((sign) => dark[sign as keyof typeof dark]);
      return [0, 1].map((half) => pairs.map((pair) => pair[half] as boolean));
    });
  }

  it('shows every module of the code, with two light ones around it', () => {
    const code = generate(address);
    const seen = modules(qrLines(address, false));
    expect(seen[0]).toHaveLength(code.size + 4);
    for (const [y, row] of seen.entries())
      expect(row, `row ${y}`).toEqual(row.map((_, x) => code.get(x - 2, y - 2)));
    expect(seen.length).toBeGreaterThanOrEqual(code.size + 4);
    expect(seen.flat().filter(Boolean).length).toBeGreaterThan(100);
  });

  it('is white on black by its own colours on a terminal that has them', () => {
    const lines = qrLines(address, true);
    expect(
      lines.every((line) => line.startsWith('\u001b[40;97m') && line.endsWith('\u001b[0m')),
    ).toBe(true);
  });
});
