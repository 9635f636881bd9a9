import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { fileOf, folder, run } from './run.ts';

/** Twenty panels all alike, with holes counted by nobody. */
const pile = JSON.stringify({
  shellraise: 1,
  pile: {
    measuredAlong: 'hubs',
    hubAllowance: 0,
    readingSd: 0.001,
    kinds: [{ id: '1', sides: [1.6, 1.6, 1.6], good: 20 }],
  },
});

describe('shellraise dossier', () => {
  it('tells an invented weekend of three phones as built, says what is open, and refuses what is no record', async () => {
    const [ball, record] = [fileOf(pile), join(folder(), 'record.jsonl')];
    const made = await run(['dossier', ball, '--invent', record, '--seed', '4', '--json']);
    const { entries } = JSON.parse(made.out);
    expect(readFileSync(record, 'utf8').trim().split('\n')).toHaveLength(entries + 1);
    const [text, json] = await Promise.all([
      run(['dossier', ball, '--record', record]),
      run(['dossier', ball, '--record', record, '--json', '--initials']),
    ]);
    expect([text.code, text.err]).toEqual([0, '']);
    for (const words of ['in place, ', 'taken back', 'found broken', 'in place of', '[photo'])
      expect(text.out).toContain(words);
    expect(text.out).toContain('licensed engineer or rigger decide');
    const dossier = JSON.parse(json.out);
    expect(dossier.entries).toBe(entries);
    expect(dossier.panels.every(({ tag }: { tag: string | null }) => tag !== null)).toBe(true);
    expect(dossier.questions).toEqual([]);
    expect(json.out).not.toContain('"by":"Maud"');
    expect(dossier.panels[0].said.by).toMatch(/^[A-Z]\.$/);

    // As sheets: those of the fit-out go with it where the file says anything of that.
    const fitted = fileOf(
      JSON.stringify({ ...JSON.parse(pile), fitout: { standsFrom: '2026-06-14' } }),
    );
    const out = folder();
    const sheets = await run(['dossier', fitted, '--record', record, '--out', out, '--json']);
    expect(sheets.err).toBe('');
    expect(JSON.parse(sheets.out).files).toEqual(['as-built.pdf', 'seal-plan.pdf', 'upkeep.pdf']);

    const lines = readFileSync(record, 'utf8').trim().split('\n');
    const cut = join(folder(), 'cut.jsonl');
    // Cut off in the middle of a line, as by a phone that died.
    writeFileSync(cut, `${lines.slice(0, 60).join('\n')}\n${(lines[60] as string).slice(0, 40)}`);
    const ran = await run(['dossier', ball, '--record', cut]);
    expect(ran.code).toBe(1);
    expect(ran.out).toContain('Lines that could not be read');
    const no = await run(['dossier', ball, '--record', ball]);
    expect(no.code).toBe(2);
    const neither = await run(['dossier', ball]);
    expect(neither.code).toBe(2);
    expect(neither.err).toContain('--record FILE');
  });
});
