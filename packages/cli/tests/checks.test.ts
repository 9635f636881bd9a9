import { spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { folder, root } from './run.ts';

/** A checkout of these files; what a package needs and the test does not name is filled in. */
function checkout(files: Readonly<Record<string, string>>): string {
  const path = folder();
  const all = {
    'packages/core/package.json': '{ "dependencies": { "zod": "4" } }',
    'packages/sync/package.json': '{ "dependencies": { "yjs": "13" } }',
    'packages/cli/package.json': '{ "dependencies": { "commander": "14" } }',
    'packages/server/package.json': '{ "dependencies": { "fastify": "5" } }',
    'packages/app/package.json': '{ "dependencies": { "react": "19", "@fontsource/plex": "5" } }',
    'packages/core/src/index.ts': '',
    'packages/sync/src/index.ts': '',
    'packages/cli/src/main.ts': '',
    'packages/server/src/main.ts': '',
    'packages/app/src/main.tsx': '',
    ...files,
  };
  for (const [name, text] of Object.entries(all)) {
    mkdirSync(dirname(join(path, name)), { recursive: true });
    writeFileSync(join(path, name), text);
  }
  return path;
}

function check(script: string, files: Readonly<Record<string, string>>) {
  const args = [join(root, 'scripts', script), checkout(files)];
  const { status, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8' });
  return { code: status, said: stderr };
}

const core = 'packages/core/src';
const server = 'packages/server/src';
const app = 'packages/app/src';

type Case = readonly [name: string, text: string, words: string];

/** Checks all cases in one checkout, so that the compiler is loaded once. */
function refuses(script: string, cases: readonly Case[]): void {
  const { code, said } = check(script, Object.fromEntries(cases));
  const lines = said.split('\n');
  for (const [name, , words] of cases)
    expect(
      lines.filter((line) => line.startsWith(name) && line.includes(words)),
      `${name}: ${words}`,
    ).toHaveLength(1);
  expect(code).toBe(1);
}

describe('the layer check', () => {
  it('lets a folder import from those above it', () => {
    const files = { [`${core}/shell/a.ts`]: "import { b } from '../math/b.ts';" };
    expect(check('check-layers.mjs', files)).toEqual({ code: 0, said: '' });
  });

  it('lets the app and the server use what they list, and core', () => {
    const files = {
      [`${server}/a.ts`]: "import 'node:fs'; import 'fastify'; import '@shellraise/core';",
      'packages/sync/src/a.ts': "import 'yjs'; import '@shellraise/core';",
      [`${app}/state/a.ts`]: "import type { Project } from '@shellraise/core';",
      [`${app}/ui/b.tsx`]: "import 'react'; import '../state/a.ts'; import 'virtual:demo';",
      [`${app}/styles/c.css`]:
        '@import "@fontsource/plex/400.css"; /* url(x) */ @import "./d.css";',
      [`${app}/styles/d.css`]: 'a { background: url("#hatch") }',
    };
    expect(check('check-layers.mjs', files)).toEqual({ code: 0, said: '' });
  });

  it('refuses all that breaks the architecture, each with its file', () => {
    refuses('check-layers.mjs', [
      [`${core}/math/a.ts`, "import { b } from '../shell/b.ts';", 'math imports from shell'],
      [`${core}/extras/b.ts`, "import { b } from '../math/b.ts';", 'no layer of core'],
      [`${core}/math/c.ts`, "import { b } from '../extras/b.ts';", 'no layer of core'],
      [`${core}/d.ts`, 'export const a = 1;', 'beside the layers'],
      [`${core}/math/e.ts`, "import { readFileSync } from 'node:fs';", 'core runs without Node'],
      ['packages/sync/src/b.ts', "import 'node:fs';", 'sync runs without Node'],
      [`${core}/math/f.ts`, "import three from 'three';", 'does not list'],
      [`${core}/math/g.ts`, "import { c } from '../../../cli/src/c.ts';", 'outside its package'],
      [`${core}/index.ts`, "export * from './math/a.ts';", 'one by one'],
      [`${core}/math/index.ts`, '', 'second index.ts'],
      [`${core}/math/h.ts`, 'export default 1;', 'default export'],
      ['packages/cli/src/i.ts', "import '@shellraise/core/dist/x.js';", 'itself is public'],
      ['packages/cli/src/j.ts', "import { x } from '../../core/src/x.ts';", 'outside its package'],
      ['packages/cli/src/k.ts', "await import('fs');", 'write node:fs'],
      [`${server}/l.ts`, "import '@shellraise/core/src/math/a.ts';", 'itself is public'],
      [`${server}/m.ts`, "import 'express';", 'does not list'],
      [`${app}/ui/n.tsx`, "import { readFileSync } from 'node:fs';", 'app runs without Node'],
      [`${app}/ui/o.tsx`, "import 'preact';", 'does not list'],
      [`${app}/ui/p.tsx`, "import '../../../core/src/math/a.ts';", 'outside its package'],
      [`${app}/state/q.ts`, "import { use } from 'react';", 'stands without a screen'],
      [`${app}/store/r.ts`, "import '../ui/n.tsx';", 'stands without a screen'],
      [`${app}/styles/s.css`, '@import "@fontsource/lato/400.css";', 'does not list'],
      [`${app}/styles/t.css`, '@import url(https://fonts.example/a.css);', 'without a network'],
      [`${app}/ui/u.tsx`, 'export default 1;', 'default export'],
    ]);
  });
});

describe('the doc check', () => {
  it('lets pass what has a doc, and loads that name their source', () => {
    const files = {
      [`${core}/math/a.ts`]: '/** One. */\nexport const one = 1;\nconst two = 2;\nvoid two;',
      [`${core}/loads/a.ts`]:
        '/** Pressure.\n * Source: EN 1991-1-4, 4.5. */\nexport function q() {}',
    };
    expect(check('check-docs.mjs', files)).toEqual({ code: 0, said: '' });
  });

  it('refuses exports without a doc, and loads without a source', () => {
    refuses('check-docs.mjs', [
      [`${core}/math/a.ts`, 'export const one = 1;', 'one has no doc'],
      [`${core}/math/b.ts`, '/** */\nexport function one() {}', 'one has no doc'],
      [`${core}/math/c.ts`, '// One.\nexport interface One {}', 'One has no doc'],
      [
        `${core}/loads/d.ts`,
        '/** Pressure. */\nexport function q() {}',
        'q does not name its source',
      ],
      [
        `${core}/loads/e.ts`,
        '/** Pressure. */\nexport const q = () => 1;',
        'does not name its source',
      ],
    ]);
  });
});

describe('the word check', () => {
  /** A value in a template of the file that is checked. */
  const value = ['$', '{a}'].join('');
  const words = (name: string, text: string, ...args: string[]) => {
    const path = join(folder(), name);
    writeFileSync(path, text);
    return spawnSync(process.execPath, [join(root, 'scripts/words.mjs'), path, ...args], {
      encoding: 'utf8',
    });
  };

  it('names a word that is not used, with its line and the word to say', () => {
    const wrong = `const a = 1;\nthrow new Error(\`${value} was calculated\`);\n`;
    const { status, stderr } = words('a.ts', wrong, '--check');
    expect(status).toBe(1);
    expect(stderr).toMatch(/a\.ts:2: "calculated": say reckon\n$/);
    expect(words('b.md', "Nothing here.\nIt can't be.\n", '--check').stderr).toMatch(
      /b\.md:2: .*say cannot/,
    );
    const both = "const c = ['10,000 panels', 'holds 4kN at most'];";
    expect(words('c.ts', both, '--check').stderr.split('\n')).toEqual([
      expect.stringMatching(/"10,000": say a space/),
      expect.stringMatching(/"4kN": say a space between/),
      '',
    ]);
  });

  it('passes the words of this project, and leaves names in the code alone', () => {
    const text = `import x from './calculate a b.ts';\nif (a === 'calculated once') say(\`${value} is reckoned\`);`;
    const { status, stderr } = words('d.ts', text, '--check');
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  });

  it('lists texts with their file and line, without what is no text', () => {
    const text = `const e = <p className="One two" title="Two three">{\`${value} panels\`}</p>;\nconst f = 'id';\n`;
    const listed = words('e.tsx', text).stdout.trim().split('\n');
    expect(listed.map((line) => line.replace(/^.*e\.tsx/, ''))).toEqual([
      ':1: Two three',
      ':1: {} panels',
    ]);
  });
});
