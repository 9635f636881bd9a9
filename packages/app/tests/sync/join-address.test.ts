import { joinAddress, spelled } from '@shellraise/sync';
import { describe, expect, it } from 'vitest';
import { addressesFor, codeIn, plainOf } from '../../src/sync/join-address.ts';

describe('the join code in an address', () => {
  it('is read as it was written, and nothing else is taken for one', () => {
    expect(codeIn('#join=ABCDE-FGHJK')).toBe('ABCDE-FGHJK');
    expect(codeIn('#join=ABCDE%20FGHJK')).toBe('ABCDE FGHJK');
    for (const hash of [
      '',
      '#record',
      '#join=',
      '#join',
      '#join=%',
      '#join=a&b',
      '#xjoin=ABCDEFGHJK',
    ])
      expect(codeIn(hash), hash).toBeNull();
  });

  it('comes back from the address that was made with it', () => {
    const address = joinAddress('http://192.168.1.5:4180/#pile', 'ABCDEFGHJK');
    expect(address).toBe('http://192.168.1.5:4180/#join=ABCDE-FGHJK');
    expect(codeIn(new URL(address).hash)).toBe(spelled('ABCDEFGHJK'));
  });

  it('is for the page’s own address, or where that is this computer’s own, for those it has in its networks', () => {
    const told = ['http://10.0.0.2:4180/', 'http://192.168.1.5:4180/'];
    expect(addressesFor('http://192.168.1.5:4180/#record', told)).toEqual([told[1], told[0]]);
    for (const own of ['localhost', '127.0.0.1', '[::1]']) {
      expect(addressesFor(`http://${own}:4180/`, told)).toEqual(told);
      expect(addressesFor(`http://${own}:4180/`, [])).toEqual([]);
    }
  });

  it('over https has a plain twin, from which phones get the root', () => {
    const all = ['https://10.0.0.2:4443/', 'http://192.168.1.5:4180/', 'http://10.0.0.2:4180/'];
    expect(plainOf('https://10.0.0.2:4443/', all)).toBe('http://10.0.0.2:4180/');
    expect(plainOf('https://10.0.0.9:4443/', all)).toBeUndefined();
    expect(plainOf('http://10.0.0.2:4180/', all)).toBeUndefined();
  });
});
