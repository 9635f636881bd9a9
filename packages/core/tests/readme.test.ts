import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import * as core from '../src/index.ts';

test('the example of the README runs on the demo and ends with a drawing', () => {
  const readme = readFileSync(new URL('../README.md', import.meta.url), 'utf8');
  const code = /```js\n([\s\S]*?)```/.exec(readme)?.[1] ?? '';
  const names = (/import \{([\s\S]*?)\}/.exec(code)?.[1] ?? '').match(/\w+/g) ?? [];
  const body = code.replace(/import[\s\S]*?;\n/, '');
  const text = readFileSync(
    new URL('../../../examples/demo/project.json', import.meta.url),
    'utf8',
  );
  const offered: Readonly<Record<string, unknown>> = { ...core };
  const run = new Function('text', ...names, `${body}\nreturn { svg, buy, shell };`);
  const result = run(text, ...names.map((name) => offered[name]));
  expect(result.svg).toMatch(/^<\?xml|^<svg/);
  expect(result.shell.kind).toHaveLength(160);
  expect(result.buy.lines.length).toBeGreaterThan(5);
});
