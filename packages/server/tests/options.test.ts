import { describe, expect, it } from 'vitest';
import { openCommand } from '../src/open-page.ts';
import { readOptions } from '../src/options.ts';
import { usualFolder } from '../src/sync/folder.ts';

const read = (...words: readonly string[]) => {
  const read = readOptions(words);
  return read.ok ? read.options : read.fault;
};

const usual = {
  port: null,
  lan: false,
  https: false,
  httpsPort: null,
  newRoot: false,
  data: null,
  postgres: null,
  redis: null,
  names: [],
  proxies: [],
  codes: false,
  open: true,
  help: false,
};

describe('options', () => {
  it('have this computer alone, any port and an opened page where nothing is said', () => {
    expect(read()).toEqual(usual);
  });

  it('are read in any order', () => {
    const asked = { ...usual, port: 8080, lan: true, open: false };
    expect(read('--lan', '--no-open', '--port', '8080')).toEqual(asked);
    expect(read('--port=8080', '--no-open', '--lan')).toEqual(asked);
  });

  it('refuse a port that is none, with what was found and what is allowed', () => {
    for (const port of ['0', '65536', '80.5', 'x', '', '1e3', '-1'])
      expect(read(`--port=${port}`)).toBe(`--port: found ${port}, expected 1 to 65535`);
    expect(read('--data=')).toContain('expected a folder');
    expect(read('--data', 'x', '--codes')).toEqual({ ...usual, data: 'x', codes: true });
    expect(read('--port=65535')).toMatchObject({ port: 65_535 });
  });

  it('take https for phones, which lets the network in', () => {
    const asked = { ...usual, lan: true, https: true };
    expect(read('--https')).toEqual(asked);
    expect(read('--https', '--https-port', '8443', '--new-root')).toEqual({
      ...asked,
      httpsPort: 8443,
      newRoot: true,
    });
    expect(read('--https', '--https-port=x')).toContain('--https-port: found x, expected 1 to');
    for (const alone of ['--new-root', '--https-port=8443'])
      expect(read(alone)).toContain('expected together with --https');
  });

  it('take databases by address, from the environment too, and never repeat what may be a password', () => {
    const [postgres, redis] = ['postgres://a:secret@db/x', 'redis://news:6379'];
    const asked = { ...usual, postgres, redis };
    expect(read('--postgres', postgres, '--redis', redis)).toEqual(asked);
    const env = { SHELLRAISE_POSTGRES: postgres, SHELLRAISE_REDIS: redis };
    expect(readOptions([], env)).toEqual({ ok: true, options: asked });
    expect(readOptions(['--postgres=postgres://b/y'], env)).toMatchObject({
      options: { postgres: 'postgres://b/y', redis },
    });
    for (const wrong of ['db:secret', 'http://a:secret@db', '']) {
      expect(read(`--postgres=${wrong}`)).toContain('--postgres: expected an address');
      expect(read(`--postgres=${wrong}`)).not.toContain('secret');
    }
    expect(read('--redis', redis)).toContain('expected together with --postgres');
    expect(read('--postgres', postgres, '--data', 'x')).toContain('expected one of the two');
  });

  it('take names and balancers, and refuse what is none', () => {
    expect(
      read('--name', 'Dome.example', '--name', 'b', '--proxy', '10.0.0.1', '--proxy=10.1.0.0/16'),
    ).toEqual({ ...usual, names: ['dome.example', 'b'], proxies: ['10.0.0.1', '10.1.0.0/16'] });
    for (const name of ['a:80', 'http://a', '', '*', 'a/b'])
      expect(read(`--name=${name}`)).toContain(`--name: found ${name}`);
    for (const proxy of ['balancer', '', 'true'])
      expect(read(`--proxy=${proxy}`)).toContain(`--proxy: found ${proxy}`);
  });

  it('refuse what they do not know', () => {
    expect(read('--wan')).toContain('--wan');
    expect(read('demo.json')).toContain('demo.json');
    expect(read('--port')).toContain('--port');
  });
});

describe('the folder where a site is kept', () => {
  it('is where each system has programs keep theirs', () => {
    expect(usualFolder('linux', {}, '/home/a')).toBe('/home/a/.local/share/shellraise');
    expect(usualFolder('linux', { XDG_DATA_HOME: '/data' }, '/home/a')).toBe('/data/shellraise');
    expect(usualFolder('darwin', {}, '/Users/a')).toContain('Application Support');
    expect(usualFolder('win32', { LOCALAPPDATA: 'C:\\x' }, 'C:\\a')).toContain('Shellraise');
  });
});

describe('opening the page', () => {
  it('is left to what each system has for it', () => {
    const address = 'http://localhost:4180/';
    expect(openCommand('linux', address)).toEqual(['xdg-open', [address]]);
    expect(openCommand('darwin', address)).toEqual(['open', [address]]);
    expect(openCommand('win32', address)).toEqual(['cmd', ['/c', 'start', '""', address]]);
  });
});
