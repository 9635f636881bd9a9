import { describe, expect, it } from 'vitest';
import { photoHash, photoKind, strippedPhoto } from '../src/photo.ts';
import { exif, jpeg, phoneJpeg, png, shownJpeg, tellingPng, tellingWebp, webp } from './photos.ts';

const told = (photo: Uint8Array | null): string => Buffer.from(photo ?? []).toString('latin1');

describe('a photo', () => {
  it('is told by its bytes', () => {
    expect([jpeg(), png(), webp].map(photoKind)).toEqual(['image/jpeg', 'image/png', 'image/webp']);
    for (const other of ['', 'GIF89a', '<svg xmlns="x"/>', '<html>', 'RIFF0000WAVE', '\xff\xd8'])
      expect(photoKind(Buffer.from(other, 'latin1'))).toBeNull();
  });

  it('stripped tells nothing but its picture, and stripped again stays as it is', () => {
    for (const [telling, plain] of [
      [tellingPng, png()],
      [tellingWebp, webp],
      [phoneJpeg(1), jpeg()],
    ] as const) {
      expect(told(telling)).toContain('52.2297N');
      expect(told(strippedPhoto(telling))).toBe(told(plain));
      expect(strippedPhoto(plain)).toEqual(plain);
    }
  });

  it('keeps how a JPEG is to be turned, and nothing else of its Exif', () => {
    for (const little of [false, true])
      for (let turned = 2; turned <= 8; turned++) {
        const stripped = strippedPhoto(phoneJpeg(turned, little)) as Uint8Array;
        // SOI, the one segment, the picture, EOI.
        expect(stripped.length).toBe(2 + 36 + shownJpeg.length + 2);
        expect(stripped[2 + 28 + 1]).toBe(turned);
        for (const word of ['52.2297N', 'Ada', 'Warsaw', 'film', 'MPF'])
          expect(told(stripped)).not.toContain(word);
        expect(strippedPhoto(stripped)).toEqual(stripped);
      }
    expect(strippedPhoto(jpeg(exif(9)))).toEqual(jpeg());
  });

  it('that is cut off anywhere, or has another’s beginning, is none', () => {
    for (const whole of [jpeg(), png(), webp])
      for (let length = 0; length < whole.length; length++)
        expect(strippedPhoto(whole.subarray(0, length)), `${length}`).toBeNull();
    const crossed = Uint8Array.from(png());
    crossed.set(Buffer.from('IDAT'), 12);
    expect(strippedPhoto(crossed)).toBeNull();
  });

  it('with any byte changed is refused or stripped, never a fault', () => {
    for (const whole of [phoneJpeg(), tellingPng, tellingWebp])
      for (let at = 0; at < whole.length; at++)
        for (const value of [0, 0x7f, 0xff]) {
          const spoilt = Uint8Array.from(whole);
          spoilt[at] = value;
          const stripped = strippedPhoto(spoilt);
          if (stripped) expect(strippedPhoto(stripped), `${at}`).toEqual(stripped);
        }
  });
});

describe('the name of a photo', () => {
  // FIPS 180-4 names the standard; these are its one-block and two-block examples, and no bytes at all.
  const examples = {
    '': 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855',
    abc: 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
    abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq:
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
  };

  it.each(Object.entries(examples))('is the SHA-256 of its bytes: %j', (text, hash) => {
    expect(photoHash(new TextEncoder().encode(text))).toBe(hash);
  });

  it('is the one that a browser reckons over https', async () => {
    const bytes = phoneJpeg();
    const digest = await crypto.subtle.digest('SHA-256', Uint8Array.from(bytes));
    expect(photoHash(bytes)).toBe(Buffer.from(digest).toString('hex'));
  });
});
