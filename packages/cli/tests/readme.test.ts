import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { folder, root, run } from './run.ts';

const documents = ['README.md', 'docs/command-line.md', 'docs/file-format.md', 'docs/method.md'];
const read = (name: string): string => readFileSync(join(root, name), 'utf8');

interface Session {
  readonly command: string;
  readonly output: readonly string[];
}

/** The commands in a document's console blocks, each with the lines of output that follow it. */
function sessions(text: string): Session[] {
  const blocks = [...text.matchAll(/```console\n([\s\S]*?)```/g)].map((match) => match[1] ?? '');
  return blocks.flatMap((block) =>
    block
      .split(/^\$ /m)
      .slice(1)
      .map((part) => {
        const [command = '', ...output] = part.trimEnd().split('\n');
        return { command, output: output.map((line) => line.trimEnd()) };
      }),
  );
}

const shown = documents
  .filter((name) => existsSync(join(root, name)))
  .flatMap((name) => sessions(read(name)).map((session) => ({ name, ...session })));
const ours = shown.filter(({ command }) => command.startsWith('npx shellraise '));

describe('the examples of the README', () => {
  it('are there', () => {
    expect(ours.length).toBeGreaterThan(0);
  });

  it.each(ours)('$name: $command prints what is shown', async ({ command, output }) => {
    const out = folder();
    const args = command
      .split(/\s+/)
      .slice(2)
      .map((word) => (word === 'sheets' ? out : word));
    const ran = await run(args);
    expect(ran.err).toBe('');
    const lines = ran.out.split('\n').map((line) => line.trimEnd());
    let from = 0;
    for (const line of output.filter((one) => one !== '' && one !== '…')) {
      const at = lines.indexOf(line, from);
      expect(at, `after line ${from} of the output: ${line}`).toBeGreaterThanOrEqual(0);
      from = at + 1;
    }
  });

  it('name the two commands, which are scripts of the workspace', () => {
    const { scripts } = JSON.parse(read('package.json'));
    for (const name of ['start', 'test']) {
      expect(read('README.md')).toContain(`npm ${name}`);
      expect(scripts[name]).toContain(`scripts/${name}.mjs`);
    }
  });
});

describe('the documents', () => {
  it.each(documents)('%s links only to what is there', (name) => {
    const links = [...read(name).matchAll(/\]\((?!https?:)([^)#]+)/g)].map(
      (match) => match[1] ?? '',
    );
    for (const link of links)
      expect(existsSync(join(root, name, '..', link)), `${name}: ${link}`).toBe(true);
  });

  it('keep the README under 200 lines', () => {
    expect(read('README.md').split('\n').length).toBeLessThan(200);
  });
});
