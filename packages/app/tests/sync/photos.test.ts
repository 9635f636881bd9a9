import { createHash } from 'node:crypto';
import { strippedPhoto } from '@shellraise/sync';
import { expect, it } from 'vitest';
import { phoneJpeg } from '../../../sync/tests/photos.ts';
import { browser, laptop } from './devices.ts';

it('a photo that crew brings is seen by a looker, one that is not its hash by nobody', async () => {
  const up = await laptop();
  const codes = await up.codes();
  const crew = browser(up.port, 'crew').open();
  const looker = browser(up.port, 'looker').open();
  await crew.site.join(codes.crew);
  await looker.site.join(codes.looker);
  const bytes = strippedPhoto(phoneJpeg()) as Uint8Array<ArrayBuffer>;
  const picture = new Blob([bytes], { type: 'image/jpeg' });
  const hash = createHash('sha256').update(bytes).digest('hex');
  for (let twice = 0; twice < 2; twice++)
    expect(await crew.site.calls.bringPhoto(hash, picture)).toEqual({ ok: true, value: true });
  const seen = await looker.site.calls.photo(hash);
  expect(seen.ok && new Uint8Array(await seen.value.arrayBuffer())).toEqual(bytes);
  expect((await looker.site.calls.bringPhoto(hash, picture)).ok).toBe(false);
  const other = 'f'.repeat(64);
  expect((await crew.site.calls.bringPhoto(other, picture)).ok).toBe(false);
  expect((await looker.site.calls.photo(other)).ok).toBe(false);
});
