import { writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { RecordLog, recordSeries } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import { codePicture } from '../../src/record/code-picture.ts';
import { codesWords as words } from '../../src/words/codes.ts';
import { recordWords as record } from '../../src/words/record.ts';
import { recordingWords as recording } from '../../src/words/recording.ts';
import { inBrowser } from './support.ts';

/** Points to a module of a code in the film. */
const SCALE = 6;

/** What the camera sees: each code for some frames, as a film (YUV4MPEG2, colours at half size). */
function film(name: string, codes: readonly string[]): string {
  const pictures = codes.map(codePicture);
  const side = 2 * Math.ceil((Math.max(...pictures.map(({ size }) => size)) * SCALE) / 2);
  const frames = pictures.flatMap(({ path }) => {
    const light = Buffer.alloc(side * side, 235);
    for (const [, x, y, w] of path.matchAll(/M(\d+) (\d+)h(\d+)v1/g))
      for (let j = 0; j < SCALE; j++) {
        const at = (Number(y) * SCALE + j) * side + Number(x) * SCALE;
        light.fill(16, at, at + Number(w) * SCALE);
      }
    const frame = [Buffer.from('FRAME\n'), light, Buffer.alloc((side * side) / 2, 128)];
    return Array.from({ length: 10 }, () => Buffer.concat(frame));
  });
  const file = join(tmpdir(), `shellraise-${name}-${process.pid}.y4m`);
  const head = Buffer.from(`YUV4MPEG2 W${side} H${side} F10:1 Ip A1:1 C420jpeg\n`);
  writeFileSync(file, Buffer.concat([head, ...frames]));
  return file;
}

/** Another device's record, of more than one code. */
function said(): RecordLog {
  const log = new RecordLog();
  for (let i = 0; i < 40; i++) {
    const place = `1-${String(i + 1).padStart(2, '0')}`;
    const what = { kind: 'panel placed', place, tag: null, turn: null } as const;
    log.add(log.write(what, { writer: 'abcdefgh', by: 'Bo', at: 1781254800000 + 61_000 * i }));
  }
  return log;
}

const codes = recordSeries(said().entries());
const camera = (file: string): string[] => [
  '--no-sandbox',
  '--use-fake-ui-for-media-stream',
  '--use-fake-device-for-media-stream',
  `--use-file-for-fake-video-capture=${file}`,
];
const { open } = inBrowser({ args: camera(film('codes', codes)) });
const tagged = inBrowser({ args: camera(film('tag', ['0143'])) });

describe('codes on another device’s screen', () => {
  it('are read by the camera, and their entries are in the record', async () => {
    expect(codes.length).toBeGreaterThan(1);
    const { page, faults } = await open({ sheet: 'record' });
    await page.getByRole('button', { name: words.read, exact: true }).click();
    await page.getByText(words.brought(40)).waitFor({ timeout: 60_000 });
    await page.keyboard.press('Escape');
    await page.getByText(record.saved.count(40)).waitFor();
    await page.getByRole('application', { name: /: 40 of \d+ placed$/ }).waitFor();
    expect(faults).toEqual([]);
  });
});

describe('the code on a panel', () => {
  it('is read by the camera as its tag', async () => {
    const { page, faults } = await tagged.open({ sheet: 'record' });
    await page.getByRole('tab', { name: recording.tab.tag, exact: true }).click();
    await page.getByRole('button', { name: recording.scan.start, exact: true }).click();
    const field = page.getByLabel(recording.tagged.tag, { exact: true });
    await expect.poll(() => field.inputValue(), { timeout: 30_000 }).toBe('0143');
    // The camera is let go.
    await page.getByRole('button', { name: recording.scan.start, exact: true }).waitFor();
    expect(faults).toEqual([]);
  });
});
